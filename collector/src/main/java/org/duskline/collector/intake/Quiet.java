package org.duskline.collector.intake;

import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttMessage;

/** A guest of a connection that only publishes. */
final class Quiet implements SteadyConnection.Guest {
    @Override
    public void arrive(MqttAsyncClient connection) {
        // nothing to subscribe to
    }

    @Override
    public void hear(MqttAsyncClient connection, String topic, MqttMessage message) {
        // nobody sends to a client without subscriptions
    }
}
