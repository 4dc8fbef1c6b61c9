package org.duskline.collector.intake;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import org.duskline.collector.wire.Message;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Listens to the nodes at a broker. The session outlives a restart of either side, each message is acknowledged only
 * after the sink has made it durable, and whatever waits is given to the sink in one batch. A message whose
 * acknowledgement was lost comes again; the sink must know repeats.
 */
public final class BrokerSource implements AutoCloseable {
    private static final int MOST_WAITING = 5_000;
    private static final int MOST_IN_A_BATCH = 2_000;
    private static final int AT_LEAST_ONCE = 1;
    /** MQTT 3.1.1, section 3.9.3. */
    private static final int REFUSED = 0x80;

    private static final Duration PATIENCE = Duration.ofMillis(200);

    /** Longer than a broker needs to keep what a node left with it; own choice. */
    private static final Duration ASKED_ONCE_MORE = Duration.ofSeconds(5);

    private static final Logger log = LoggerFactory.getLogger(BrokerSource.class);

    private record Delivery(Message message, MqttAsyncClient connection, int packet, int qos) {}

    private final BrokerAddress broker;
    private final Topics topics;
    private final MessageSink sink;
    private final InstantSource clock;
    private final SteadyConnection connection;
    private final Pauses storingPauses;
    private final BlockingQueue<Delivery> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private final CountDownLatch stopping = new CountDownLatch(1);
    private final Thread storing = new Thread(this::store, "intake");

    /**
     * Listens for good: what comes while nobody listens is kept by the broker, under the client's name.
     *
     * @param broker where to listen
     * @param clientName the name under which the broker keeps our session; stable over restarts, and one program's alone
     * @param topics what to listen to
     * @param sink takes the messages, on one thread of this source
     * @param clock tells when a message reached us
     * @param random spreads the pauses between tries
     */
    public BrokerSource(
            BrokerAddress broker,
            String clientName,
            Topics topics,
            MessageSink sink,
            InstantSource clock,
            RandomGenerator random) {
        this(broker, clientName, topics, sink, clock, random, false);
    }

    private BrokerSource(
            BrokerAddress broker,
            String clientName,
            Topics topics,
            MessageSink sink,
            InstantSource clock,
            RandomGenerator random,
            boolean forgotten) {
        this.broker = broker;
        this.topics = topics;
        this.sink = sink;
        this.clock = clock;
        MqttConnectOptions options = SteadyConnection.options(broker);
        options.setCleanSession(forgotten);
        this.connection = new SteadyConnection(broker, clientName, options, new Listening(), clock, random);
        this.storingPauses = new Pauses(SteadyConnection.FIRST_PAUSE, SteadyConnection.LONGEST_PAUSE, random);
        this.storing.setDaemon(true);
    }

    /** Listens for a while: the broker forgets us when we part, and keeps nothing for a listener that never returns. */
    public static BrokerSource passing(
            BrokerAddress broker,
            String clientName,
            Topics topics,
            MessageSink sink,
            InstantSource clock,
            RandomGenerator random) {
        return new BrokerSource(broker, clientName, topics, sink, clock, random, true);
    }

    /** Begins to listen; returns at once, also while the broker is down. */
    public void start() {
        storing.start();
        connection.start();
    }

    /** How the connection stands. */
    public LinkState state() {
        return connection.state();
    }

    private void store() {
        List<Delivery> batch = new ArrayList<>();
        try {
            while (!stopped() || !waiting.isEmpty()) {
                Delivery first = waiting.poll(PATIENCE.toMillis(), TimeUnit.MILLISECONDS);
                if (first != null) {
                    batch.add(first);
                    waiting.drainTo(batch, MOST_IN_A_BATCH - 1);
                    keep(batch);
                    batch.clear();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Stores the batch, however often that must be tried; only then are its messages acknowledged. */
    private void keep(List<Delivery> batch) throws InterruptedException {
        List<Message> messages = batch.stream().map(Delivery::message).toList();
        while (!stored(messages)) {
            if (stopping.await(storingPauses.next().toNanos(), TimeUnit.NANOSECONDS)) {
                return;
            }
        }
        storingPauses.restart();
        batch.forEach(BrokerSource::acknowledge);
    }

    private boolean stored(List<Message> messages) {
        try {
            sink.take(messages);
            return true;
        } catch (RuntimeException e) {
            log.debug("Storing failed", e);
            connection.noteTrouble("Messages could not be stored (" + messages.size() + " in hand): " + e.getMessage()
                    + " They wait at the broker and are tried again.");
            return false;
        }
    }

    private boolean stopped() {
        return stopping.getCount() == 0;
    }

    private static void acknowledge(Delivery delivery) {
        try {
            delivery.connection().messageArrivedComplete(delivery.packet(), delivery.qos());
        } catch (MqttException e) {
            log.debug("A message is stored but not acknowledged; it will come again and be known as a repeat", e);
        }
    }

    /** Stores and acknowledges what is in hand, then parts. The broker keeps the session and what comes meanwhile. */
    @Override
    public void close() {
        stopping.countDown();
        try {
            storing.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        connection.close();
    }

    private final class Listening implements SteadyConnection.Guest {
        /** Does not wait for the answers: a backlog may come before them, and must be stored first. */
        @Override
        public void arrive(MqttAsyncClient client) throws MqttException {
            String[] all = {topics.allReadings(), topics.allStatuses(), topics.allAcknowledgements()};
            subscribe(client, all, () -> askForWhatIsKept(client, () -> askOnceMore(client)));
        }

        /**
         * What a node leaves at the broker while it takes down our subscription can be withheld: not yet kept, and no
         * longer new. A second subscription brings whatever is kept by then (MQTT 3.1.1, section 3.8.4).
         */
        private void askForWhatIsKept(MqttAsyncClient client, Runnable then) {
            try {
                subscribe(client, new String[] {topics.allStatuses(), topics.allAcknowledgements()}, then);
            } catch (MqttException gone) {
                connection.noteTrouble(Trouble.words(broker, gone));
            }
        }

        /** A broker that has only just started takes its time to keep what it was given. */
        private void askOnceMore(MqttAsyncClient client) {
            CompletableFuture.delayedExecutor(ASKED_ONCE_MORE.toMillis(), TimeUnit.MILLISECONDS)
                    .execute(() -> {
                        if (!stopped() && client.isConnected()) {
                            askForWhatIsKept(client, () -> {});
                        }
                    });
        }

        private void subscribe(MqttAsyncClient client, String[] filters, Runnable then) throws MqttException {
            int[] levels = new int[filters.length];
            Arrays.fill(levels, AT_LEAST_ONCE);
            client.subscribe(filters, levels, null, new Answer(then));
        }

        @Override
        public void hear(MqttAsyncClient client, String topic, MqttMessage message) throws InterruptedException {
            Instant received = clock.instant();
            Delivery delivery = new Delivery(
                    new Message(received, topic, message.getPayload(), message.isRetained()),
                    client,
                    message.getId(),
                    message.getQos());
            while (!stopped() && !waiting.offer(delivery, PATIENCE.toMillis(), TimeUnit.MILLISECONDS)) {
                log.debug("The store is slower than the broker; the broker waits");
            }
        }
    }

    /** What the broker says to a subscription. */
    private final class Answer implements IMqttActionListener {
        private final Runnable then;

        /** @param then done once it has let us listen */
        Answer(Runnable then) {
            this.then = then;
        }

        @Override
        public void onSuccess(IMqttToken answer) {
            if (Arrays.stream(answer.getGrantedQos()).anyMatch(granted -> granted == REFUSED)) {
                connection.noteTrouble(Trouble.notAllowedToListen(broker));
            } else {
                then.run();
            }
        }

        @Override
        public void onFailure(IMqttToken answer, Throwable failure) {
            connection.noteTrouble(Trouble.words(broker, failure));
        }
    }
}
