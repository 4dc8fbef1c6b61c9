package org.duskline.collector.intake;

import java.time.Duration;
import java.time.InstantSource;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.random.RandomGenerator;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Keeps one connection to a broker up, the first one included, with growing pauses between tries. Every connection is a
 * client object of its own, so that an acknowledgement can only travel over the connection that its message came by: on
 * the next one the broker may have given the same packet number to another message.
 */
final class SteadyConnection implements AutoCloseable {
    /** What to do with a connection. */
    interface Guest {
        /** Called on each new connection, before it counts as up. */
        void arrive(MqttAsyncClient connection) throws MqttException;

        /** Called for each message, on the client's own thread; may block. */
        void hear(MqttAsyncClient connection, String topic, MqttMessage message) throws InterruptedException;
    }

    static final Duration FIRST_PAUSE = Duration.ofMillis(250);
    static final Duration LONGEST_PAUSE = Duration.ofSeconds(30);
    private static final Duration LASTING = Duration.ofSeconds(10);
    private static final long ANSWER_MILLIS = 15_000;
    private static final long PARTING_MILLIS = 2_000;
    private static final Logger log = LoggerFactory.getLogger(SteadyConnection.class);

    private final BrokerAddress broker;
    private final String clientName;
    private final MqttConnectOptions options;
    private final Guest guest;
    private final InstantSource clock;
    private final Pauses pauses;
    private final AtomicReference<LinkState> state = new AtomicReference<>(LinkState.UNTRIED);
    private final AtomicReference<MqttAsyncClient> current = new AtomicReference<>();
    private final CountDownLatch closed = new CountDownLatch(1);
    private final Thread keeper;

    SteadyConnection(
            BrokerAddress broker,
            String clientName,
            MqttConnectOptions options,
            Guest guest,
            InstantSource clock,
            RandomGenerator random) {
        this.broker = broker;
        this.clientName = clientName;
        this.options = options;
        this.guest = guest;
        this.clock = clock;
        this.pauses = new Pauses(FIRST_PAUSE, LONGEST_PAUSE, random);
        this.keeper = new Thread(this::keepUp, "broker-" + clientName);
        this.keeper.setDaemon(true);
    }

    /** The options that every connection of ours shares. */
    static MqttConnectOptions options(BrokerAddress broker) {
        MqttConnectOptions options = new MqttConnectOptions();
        options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
        options.setAutomaticReconnect(false);
        options.setConnectionTimeout(10);
        options.setKeepAliveInterval(30);
        options.setMaxInflight(1000);
        broker.user().ifPresent(options::setUserName);
        broker.password().ifPresent(password -> options.setPassword(password.toCharArray()));
        if (broker.encrypted()) {
            broker.authority().ifPresent(file -> options.setSocketFactory(Authority.trusting(file)));
        }
        return options;
    }

    void start() {
        keeper.start();
    }

    LinkState state() {
        return state.get();
    }

    void noteTrouble(String words) {
        state.updateAndGet(before -> before.troubled(words, clock.instant()));
        log.warn("{}", words);
    }

    /** The connection that is up now, or null. */
    MqttAsyncClient current() {
        return current.get();
    }

    private boolean isClosed() {
        return closed.getCount() == 0;
    }

    private void keepUp() {
        try {
            do {
                holdOnce();
            } while (!closed.await(pauses.next().toNanos(), TimeUnit.NANOSECONDS));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** One connection, from the first try to its loss. */
    private void holdOnce() throws InterruptedException {
        CountDownLatch lost = new CountDownLatch(1);
        MqttAsyncClient client = null;
        try {
            client = new MqttAsyncClient(broker.socketUri(), clientName, new MemoryPersistence());
            client.setManualAcks(true);
            client.setCallback(new Ears(client, lost));
            client.connect(options).waitForCompletion(ANSWER_MILLIS);
            guest.arrive(client);
            current.set(client);
            state.updateAndGet(before -> before.up(clock.instant()));
            log.info("Connected to the broker at {} as {}.", broker, clientName);
            stayUntilLost(lost);
        } catch (MqttException e) {
            if (!isClosed()) {
                noteTrouble(Trouble.words(broker, e));
            }
        } finally {
            current.set(null);
            state.updateAndGet(LinkState::down);
            part(client);
        }
    }

    private void stayUntilLost(CountDownLatch lost) throws InterruptedException {
        if (!lost.await(LASTING.toNanos(), TimeUnit.NANOSECONDS)) {
            pauses.restart();
            lost.await();
        }
    }

    private void part(MqttAsyncClient client) {
        if (client == null) {
            return;
        }
        try {
            if (client.isConnected()) {
                client.disconnect(PARTING_MILLIS).waitForCompletion(2 * PARTING_MILLIS);
            } else {
                client.disconnectForcibly(0, 1, false);
            }
        } catch (MqttException e) {
            log.debug("Parting from {} was not clean", broker, e);
        }
        try {
            client.close(true);
        } catch (MqttException e) {
            log.debug("Closing the connection to {} was not clean", broker, e);
        }
    }

    /** Parts from the broker and stops trying. Returns when the connection is gone. */
    @Override
    public void close() {
        closed.countDown();
        keeper.interrupt();
        try {
            keeper.join(3 * PARTING_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private final class Ears implements MqttCallback {
        private final MqttAsyncClient client;
        private final CountDownLatch lost;

        Ears(MqttAsyncClient client, CountDownLatch lost) {
            this.client = client;
            this.lost = lost;
        }

        @Override
        public void connectionLost(Throwable cause) {
            if (!isClosed()) {
                noteTrouble(Trouble.words(broker, cause));
            }
            lost.countDown();
        }

        @Override
        public void messageArrived(String topic, MqttMessage message) throws InterruptedException {
            state.updateAndGet(before -> before.heard(clock.instant()));
            guest.hear(client, topic, message);
        }

        @Override
        public void deliveryComplete(IMqttDeliveryToken token) {
            // who publishes waits for the token
        }
    }
}
