package org.duskline.collector.intake;

import java.time.InstantSource;
import java.util.random.RandomGenerator;
import org.duskline.collector.wire.Message;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;

/** Publishes messages as their nodes would: for a line that is played. Statuses are retained, readings are not. */
public final class MessageRelay implements AutoCloseable {
    private static final int AT_LEAST_ONCE = 1;
    private static final int MOST_UNCONFIRMED = 200;
    private static final long ANSWER_MILLIS = 10_000;
    private static final String STATUS = "/status";

    private final BrokerAddress broker;
    private final SteadyConnection connection;
    private int unconfirmed;

    /**
     * @param broker where to publish
     * @param clientName a name that no other client of this broker uses
     * @param clock dates the connection's state
     * @param random spreads the pauses between tries
     */
    public MessageRelay(BrokerAddress broker, String clientName, InstantSource clock, RandomGenerator random) {
        this.broker = broker;
        MqttConnectOptions options = SteadyConnection.options(broker);
        options.setCleanSession(true);
        this.connection = new SteadyConnection(broker, clientName, options, new Quiet(), clock, random);
    }

    /** Begins to connect; returns at once. */
    public void start() {
        connection.start();
    }

    public LinkState state() {
        return connection.state();
    }

    /**
     * Publishes a message. Waits for the broker's confirmation only now and then, so that many can be on their way.
     *
     * @throws BrokerUnreachable if the broker is away or stopped confirming
     */
    public void publish(Message message) throws BrokerUnreachable {
        MqttAsyncClient client = connection.current();
        if (client == null) {
            throw new BrokerUnreachable(
                    connection.state().trouble().orElse("The broker at " + broker + " has not been reached yet."));
        }
        boolean retained = message.topic().endsWith(STATUS);
        try {
            IMqttDeliveryToken token = client.publish(message.topic(), message.payload(), AT_LEAST_ONCE, retained);
            unconfirmed++;
            if (unconfirmed >= MOST_UNCONFIRMED) {
                token.waitForCompletion(ANSWER_MILLIS);
                unconfirmed = 0;
            }
        } catch (MqttException e) {
            throw new BrokerUnreachable(Trouble.words(broker, e), e);
        }
    }

    @Override
    public void close() {
        connection.close();
    }
}
