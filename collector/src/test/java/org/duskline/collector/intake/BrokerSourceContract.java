package org.duskline.collector.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.ChildJvm;
import org.duskline.collector.testing.Mosquitto;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What listening must hold to at any broker: nothing lost, whoever falls over. */
abstract class BrokerSourceContract {
    static final Instant NOON = Instant.parse("2026-05-12T12:00:00Z");
    private static final String READINGS = "traps/n07/readings";
    private static final int ROUNDS = 40;

    @TempDir
    Path folder;

    private final Notebook notebook = new Notebook();
    private final List<AutoCloseable> open = new ArrayList<>();
    private int port;
    private AutoCloseable broker;

    /** Starts the broker on the port, with what it kept in the folder. */
    abstract AutoCloseable startBroker(Path kept, int onPort) throws Exception;

    @BeforeEach
    void choosePort() throws Exception {
        port = Mosquitto.freePort();
    }

    @AfterEach
    void closeAll() throws Exception {
        for (AutoCloseable each : open) {
            each.close();
        }
        if (broker != null) {
            broker.close();
        }
    }

    @Test
    void a_message_carries_its_topic_its_bytes_and_the_moment_it_came() throws Exception {
        startBroker();
        BrokerSource source = listen(notebook);
        Await.until("connected", () -> source.state().connected());
        TestNode.publish(address(), READINGS, "one");
        TestNode.publish(address(), "traps/n07/status", "online");
        TestNode.publish(address(), "traps/n07/settings", "not for us");
        TestNode.publish(address(), READINGS, "two");
        Await.until("three messages came", () -> notebook.messages().size() >= 3);

        assertThat(notebook.texts()).containsExactlyInAnyOrder("one", "online", "two");
        assertThat(notebook.messages()).allSatisfy(message -> {
            assertThat(message.received()).isEqualTo(NOON);
            assertThat(message.topic()).isIn(READINGS, "traps/n07/status");
        });
        assertThat(source.state().connectedSince()).contains(NOON);
        assertThat(source.state().lastMessage()).contains(NOON);
    }

    @Test
    void what_a_node_leaves_at_the_broker_in_the_moment_in_which_we_come_is_heard() throws Exception {
        startBroker();
        for (int round = 0; round < ROUNDS; round++) {
            String left = "left in round " + round;
            Notebook heard = new Notebook();
            int wait = round % 20;
            CompletableFuture<Void> node = CompletableFuture.runAsync(() -> leave(left, wait));
            try (BrokerSource source = source(heard, "duskline-" + round)) {
                source.start();
                node.join();
                Await.until(left + " came", () -> heard.texts().contains(left));
            }
        }
    }

    private void leave(String what, int afterMillis) {
        try {
            TimeUnit.MILLISECONDS.sleep(afterMillis);
            TestNode.retain(address(), "traps/n07/settings/ack", what);
        } catch (InterruptedException | MqttException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void the_first_connection_waits_for_a_broker_that_starts_later() throws Exception {
        BrokerSource source = listen(notebook);
        Await.until("the failure was noted", () -> source.state().trouble().isPresent());
        assertThat(source.state().connected()).isFalse();
        assertThat(source.state().trouble().orElseThrow())
                .contains("Nothing answers at mqtt://127.0.0.1:" + port)
                .contains("Check that the broker runs");

        startBroker();
        Await.until("connected", () -> source.state().connected());
        TestNode.publish(address(), READINGS, "after all");
        Await.until("the message came", () -> notebook.texts().contains("after all"));
    }

    @Test
    void what_was_published_while_duskline_was_down_comes_when_it_is_back_many_at_once() throws Exception {
        startBroker();
        BrokerSource first = listen(notebook);
        Await.until("connected", () -> first.state().connected());
        TestNode.publish(address(), READINGS, "before");
        Await.until("the first came", () -> notebook.texts().contains("before"));
        first.close();

        String[] missed = numbered(500);
        TestNode.publish(address(), READINGS, missed);
        Notebook later = new Notebook();
        listen(later);
        Await.until("all came", () -> later.texts().containsAll(List.of(missed)));

        assertThat(later.texts()).hasSize(missed.length);
        assertThat(later.batches()).isLessThan(missed.length);
    }

    @Test
    void a_kill_between_delivery_and_acknowledgement_brings_the_messages_again() throws Exception {
        startBroker();
        Path seen = folder.resolve("seen");
        Process victim = ChildJvm.start(
                ListenAndHang.class, folder.resolve("victim.log"), address(), "duskline", seen.toString());
        try {
            Await.until("the victim listens", () -> publishedUntilSeen(seen));
        } finally {
            victim.destroyForcibly().waitFor();
        }

        listen(notebook);
        Await.until("it came again", () -> notebook.texts().contains("unacknowledged"));
    }

    private boolean publishedUntilSeen(Path seen) throws Exception {
        TestNode.publish(address(), READINGS, "unacknowledged");
        return Files.exists(seen);
    }

    @Test
    void a_restart_of_the_broker_loses_nothing_and_listening_goes_on() throws Exception {
        startBroker();
        BrokerSource source = listen(notebook);
        Await.until("connected", () -> source.state().connected());
        TestNode.publish(address(), READINGS, "before");
        Await.until("the first came", () -> notebook.texts().contains("before"));

        broker.close();
        Await.until("the loss was noticed", () -> !source.state().connected());
        assertThat(source.state().trouble()).isPresent();
        startBroker();
        Await.until("connected again", () -> source.state().connected());
        TestNode.publish(address(), READINGS, "after");
        Await.until("the second came", () -> notebook.texts().contains("after"));
    }

    @Test
    void what_was_published_while_both_were_down_in_turn_is_still_there() throws Exception {
        startBroker();
        BrokerSource first = listen(notebook);
        Await.until("connected", () -> first.state().connected());
        first.close();
        TestNode.publish(address(), READINGS, "kept by the broker");
        broker.close();
        startBroker();

        Notebook later = new Notebook();
        listen(later);
        Await.until("it came", () -> later.texts().contains("kept by the broker"));
    }

    @Test
    void a_full_disk_delays_messages_and_loses_none() throws Exception {
        startBroker();
        AtomicBoolean full = new AtomicBoolean(true);
        MessageSink sink = batch -> {
            if (full.get()) {
                throw new IllegalStateException("The disk is full.");
            }
            notebook.take(batch);
        };
        BrokerSource source = listen(sink);
        Await.until("connected", () -> source.state().connected());
        TestNode.publish(address(), READINGS, numbered(30));
        Await.until(
                "the trouble was noted",
                () -> source.state()
                        .trouble()
                        .filter(words -> words.contains("could not be stored") && words.contains("The disk is full."))
                        .isPresent());
        assertThat(notebook.messages()).isEmpty();

        full.set(false);
        Await.until("all came", () -> notebook.texts().containsAll(List.of(numbered(30))));
    }

    private void startBroker() throws Exception {
        broker = startBroker(folder.resolve("broker"), port);
    }

    private BrokerSource listen(MessageSink sink) {
        BrokerSource source = source(sink, "duskline");
        open.add(source);
        source.start();
        return source;
    }

    private BrokerSource source(MessageSink sink, String client) {
        return new BrokerSource(
                BrokerAddress.of(address()), client, new Topics("traps"), sink, () -> NOON, new Random(7));
    }

    private String address() {
        return "mqtt://127.0.0.1:" + port;
    }

    private static String[] numbered(int count) {
        return IntStream.range(0, count).mapToObj(number -> "number " + number).toArray(String[]::new);
    }
}
