package org.duskline.collector.intake;

import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import javax.net.ssl.SSLException;
import org.eclipse.paho.client.mqttv3.MqttException;

/** Says in a keeper's words what went wrong with a broker and what to do next. */
final class Trouble {
    private Trouble() {}

    static String words(BrokerAddress broker, Throwable failure) {
        Throwable root = root(failure);
        if (root instanceof UnknownHostException) {
            return "No machine called " + broker.host() + " is known. Check the broker's address (mqtt.url) and the"
                    + " network's name service.";
        }
        if (root instanceof ConnectException || root instanceof NoRouteToHostException) {
            return "Nothing answers at " + broker + ". Check that the broker runs, and its address and port"
                    + " (mqtt.url).";
        }
        if (root instanceof SocketTimeoutException) {
            return "The broker at " + broker + " does not answer in time. Check the network, the port and the"
                    + " firewall.";
        }
        if (failure instanceof SSLException || failure.getCause() instanceof SSLException) {
            return encryption(broker, root);
        }
        if (failure instanceof MqttException refused) {
            return refusal(broker, refused);
        }
        return "The connection to the broker at " + broker + " failed: " + said(root) + ".";
    }

    static String notAllowedToListen(BrokerAddress broker) {
        return "The broker at " + broker + " does not let us listen to the nodes' topics. Give our user (mqtt.user) the"
                + " right to read them.";
    }

    private static String encryption(BrokerAddress broker, Throwable root) {
        String reason = said(root);
        if (reason.contains("certification path")
                || reason.contains("No trusted")
                || reason.contains("trust anchors")) {
            return "The broker at " + broker + " shows a certificate that nobody here vouches for. Give the file with"
                    + " its authority's certificate (mqtt.authority).";
        }
        if (reason.contains("No name matching") || reason.contains("alternative names")) {
            return "The certificate of the broker at " + broker + " was made for another name (" + reason
                    + "). Use the name in the certificate as address (mqtt.url).";
        }
        return "No encrypted connection to " + broker + ": " + reason + ". Check that this port speaks TLS (mqtts),"
                + " and the authority file (mqtt.authority).";
    }

    private static String refusal(BrokerAddress broker, MqttException refused) {
        return switch (refused.getReasonCode()) {
            case MqttException.REASON_CODE_FAILED_AUTHENTICATION, MqttException.REASON_CODE_NOT_AUTHORIZED ->
                "The broker at " + broker + " refuses us: it wants another user name or password (mqtt.user,"
                        + " mqtt.password).";
            case MqttException.REASON_CODE_INVALID_CLIENT_ID ->
                "The broker at " + broker + " does not take our client name. Choose another one (mqtt.client).";
            case MqttException.REASON_CODE_BROKER_UNAVAILABLE ->
                "The broker at " + broker + " says that it cannot serve anybody just now.";
            case MqttException.REASON_CODE_SUBSCRIBE_FAILED -> notAllowedToListen(broker);
            case MqttException.REASON_CODE_CLIENT_TIMEOUT, MqttException.REASON_CODE_WRITE_TIMEOUT ->
                "The broker at " + broker + " has fallen silent. Check the network and whether the broker hangs.";
            case MqttException.REASON_CODE_CONNECTION_LOST ->
                "The broker at " + broker + " has closed the connection. If this goes on: another program may use the"
                        + " same client name (mqtt.client), or the port speaks TLS only (mqtts).";
            default -> "The connection to the broker at " + broker + " failed: " + said(root(refused)) + ".";
        };
    }

    private static String said(Throwable failure) {
        String message = failure.getMessage();
        return message == null || message.isBlank() ? failure.getClass().getSimpleName() : message;
    }

    private static Throwable root(Throwable failure) {
        Throwable deepest = failure;
        while (deepest.getCause() != null && deepest.getCause() != deepest) {
            deepest = deepest.getCause();
        }
        return deepest;
    }
}
