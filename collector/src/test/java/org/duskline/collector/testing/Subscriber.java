package org.duskline.collector.testing;

import java.util.function.BiConsumer;
import org.duskline.collector.intake.BrokerAddress;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** Somebody else's program that listens at a broker. */
public final class Subscriber implements AutoCloseable {
    private final MqttClient client;

    private Subscriber(MqttClient client) {
        this.client = client;
    }

    public static Subscriber to(BrokerAddress broker, String filter, BiConsumer<String, byte[]> listener)
            throws MqttException {
        MqttClient client = new MqttClient(
                "tcp://" + broker.host() + ":" + broker.port(), MqttClient.generateClientId(), new MemoryPersistence());
        client.connect();
        client.subscribe(filter, 1, (topic, message) -> listener.accept(topic, message.getPayload()));
        return new Subscriber(client);
    }

    @Override
    public void close() throws MqttException {
        client.disconnect();
        client.close();
    }
}
