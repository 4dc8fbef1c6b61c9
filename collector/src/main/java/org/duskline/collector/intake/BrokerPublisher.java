package org.duskline.collector.intake;

import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.random.RandomGenerator;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;

/**
 * Tells alerts, the conditions of traps, the settings of nodes and its own being alive through a broker. Whoever listens
 * to the heartbeat's topic is told by the broker itself (last will) when the program dies.
 */
public final class BrokerPublisher implements AutoCloseable {
    private static final int AT_LEAST_ONCE = 1;
    private static final long ANSWER_MILLIS = 10_000;
    private static final byte[] OFFLINE = "offline".getBytes(StandardCharsets.UTF_8);

    private final BrokerAddress broker;
    private final Topics topics;
    private final SteadyConnection connection;

    /**
     * @param broker where to publish
     * @param clientName a name that no other client of this broker uses
     * @param topics the topics under the root
     * @param clock dates the connection's state
     * @param random spreads the pauses between tries
     */
    public BrokerPublisher(
            BrokerAddress broker, String clientName, Topics topics, InstantSource clock, RandomGenerator random) {
        this.broker = broker;
        this.topics = topics;
        MqttConnectOptions options = SteadyConnection.options(broker);
        options.setCleanSession(true);
        options.setWill(topics.heartbeat(), OFFLINE, AT_LEAST_ONCE, true);
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
     * Tells an alert. Returns when the broker has confirmed it.
     *
     * @throws BrokerUnreachable if it has not; the caller keeps the alert and tries again
     */
    public void alert(String trap, byte[] payload) throws BrokerUnreachable {
        publish(topics.alert(trap), payload, false);
    }

    /**
     * Tells somebody on a topic of their own. Returns when the broker has confirmed it.
     *
     * @throws BrokerUnreachable if it has not; the caller keeps it and tries again
     */
    public void tell(String whom, byte[] payload) throws BrokerUnreachable {
        publish(topics.told(whom), payload, false);
    }

    /**
     * Leaves the condition of a trap at the broker for whoever asks later.
     *
     * @throws BrokerUnreachable if the broker has not confirmed it
     */
    public void condition(String trap, byte[] payload) throws BrokerUnreachable {
        publish(topics.condition(trap), payload, true);
    }

    /**
     * Says that the program is alive, with what it wants to add.
     *
     * @throws BrokerUnreachable if the broker has not confirmed it
     */
    public void heartbeat(byte[] payload) throws BrokerUnreachable {
        publish(topics.heartbeat(), payload, true);
    }

    /**
     * Leaves a node's settings at the broker, where the node finds them whenever it connects.
     *
     * @throws BrokerUnreachable if the broker has not confirmed it
     */
    public void settings(String node, byte[] payload) throws BrokerUnreachable {
        publish(topics.settings(node), payload, true);
    }

    private void publish(String topic, byte[] payload, boolean retained) throws BrokerUnreachable {
        MqttAsyncClient client = connection.current();
        if (client == null) {
            throw new BrokerUnreachable(
                    connection.state().trouble().orElse("The broker at " + broker + " has not been reached yet."));
        }
        try {
            client.publish(topic, payload, AT_LEAST_ONCE, retained).waitForCompletion(ANSWER_MILLIS);
        } catch (MqttException e) {
            throw new BrokerUnreachable(Trouble.words(broker, e), e);
        }
    }

    /** Leaves word that it goes by intent, and parts. */
    @Override
    public void close() {
        try {
            if (connection.current() != null) {
                publish(topics.heartbeat(), OFFLINE, true);
            }
        } catch (BrokerUnreachable e) {
            connection.noteTrouble(e.getMessage());
        }
        connection.close();
    }
}
