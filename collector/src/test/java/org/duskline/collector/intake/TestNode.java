package org.duskline.collector.intake;

import java.nio.charset.StandardCharsets;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** A node as a broker sees it: connects, publishes with confirmation, goes. */
final class TestNode {
    private TestNode() {}

    static void publish(String address, String topic, String... payloads) throws MqttException {
        publish(address, new MqttConnectOptions(), false, topic, payloads);
    }

    static void retain(String address, String topic, String payload) throws MqttException {
        publish(address, new MqttConnectOptions(), true, topic, payload);
    }

    static void publish(String address, MqttConnectOptions options, boolean retained, String topic, String... payloads)
            throws MqttException {
        String socket = BrokerAddress.of(address).socketUri();
        try (MqttClient client = new MqttClient(socket, MqttClient.generateClientId(), new MemoryPersistence())) {
            options.setMaxInflight(1000);
            client.connect(options);
            for (String payload : payloads) {
                client.publish(topic, payload.getBytes(StandardCharsets.UTF_8), 1, retained);
            }
            client.disconnect();
        }
    }
}
