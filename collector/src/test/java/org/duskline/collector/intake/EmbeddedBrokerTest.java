package org.duskline.collector.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.stream.IntStream;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.ChildJvm;
import org.duskline.collector.testing.Mosquitto;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EmbeddedBrokerTest {
    @TempDir
    Path folder;

    @Test
    void any_free_port_will_do() {
        try (EmbeddedBroker broker = EmbeddedBroker.start(folder, "127.0.0.1", 0)) {
            assertThat(broker.port()).isPositive();
            assertThat(broker.address()).hasToString("mqtt://127.0.0.1:" + broker.port());
        }
    }

    @Test
    void a_port_in_use_is_named_with_what_to_do() throws Exception {
        try (ServerSocket taken = new ServerSocket(0)) {
            assertThatThrownBy(() -> EmbeddedBroker.start(folder, "127.0.0.1", taken.getLocalPort()))
                    .hasMessageContaining("127.0.0.1:" + taken.getLocalPort())
                    .hasMessageContaining("no other broker uses the port");
        }
    }

    /** Runs a broker until it is killed; says where it listens through a file. */
    static final class Victim {
        private Victim() {}

        public static void main(String[] arguments) throws Exception {
            EmbeddedBroker broker = EmbeddedBroker.start(Path.of(arguments[0]), "127.0.0.1", 0);
            Path told = Path.of(arguments[1]);
            Path draft = told.resolveSibling("draft");
            Files.writeString(draft, broker.address().toString());
            Files.move(draft, told);
            Thread.currentThread().join();
        }
    }

    @Test
    void what_a_killed_broker_had_confirmed_is_delivered_once_by_its_successor() throws Exception {
        Path kept = folder.resolve("kept");
        Path told = folder.resolve("address");
        Process victim = ChildJvm.start(Victim.class, folder.resolve("log"), kept.toString(), told.toString());
        String[] confirmed =
                IntStream.range(0, 300).mapToObj(number -> "number " + number).toArray(String[]::new);
        try {
            Await.until("the broker listens", () -> Files.exists(told));
            String address = Files.readString(told);
            subscribeAndLeave(address);
            TestNode.publish(address, "traps/n07/readings", confirmed);
            TestNode.retain(address, "traps/n07/status", "online");
        } finally {
            victim.destroyForcibly().waitFor();
        }

        Notebook notebook = new Notebook();
        try (EmbeddedBroker successor = EmbeddedBroker.start(kept, "127.0.0.1", 0);
                BrokerSource source = listen(successor, notebook)) {
            Await.until(
                    "all came",
                    () -> notebook.texts().containsAll(List.of(confirmed))
                            && notebook.texts().contains("online"));
            assertThat(source.state().connected()).isTrue();
            assertThat(notebook.texts().stream().filter(text -> text.startsWith("number")))
                    .hasSameSizeAs(confirmed);
        }
    }

    private static void subscribeAndLeave(String address) throws Exception {
        Notebook seen = new Notebook();
        try (BrokerSource listening = new BrokerSource(
                BrokerAddress.of(address),
                "duskline",
                new Topics("traps"),
                seen,
                () -> BrokerSourceContract.NOON,
                new Random(1))) {
            listening.start();
            Await.until("it hears", () -> {
                TestNode.publish(address, "traps/n07/readings", "are you there");
                return !seen.messages().isEmpty();
            });
        }
    }

    /** Says that it is alive, until it is killed. */
    static final class Alive {
        private Alive() {}

        public static void main(String[] arguments) throws Exception {
            BrokerPublisher publisher = new BrokerPublisher(
                    BrokerAddress.of(arguments[0]),
                    "teller",
                    new Topics("traps"),
                    InstantSource.system(),
                    new Random(3));
            publisher.start();
            Await.until("connected", () -> publisher.state().connected());
            publisher.heartbeat("alive".getBytes(StandardCharsets.UTF_8));
            Thread.currentThread().join();
        }
    }

    @Test
    void a_program_that_is_killed_is_announced_by_its_last_will() throws Exception {
        try (EmbeddedBroker broker = EmbeddedBroker.start(folder, "127.0.0.1", 0)) {
            Process victim = ChildJvm.start(
                    Alive.class, folder.resolve("log"), broker.address().toString());
            try {
                assertThat(firstRetained(broker, "traps/duskline/heartbeat")).isEqualTo("alive");
            } finally {
                victim.destroyForcibly().waitFor();
            }
            Await.until(
                    "the will is executed",
                    () -> firstRetained(broker, "traps/duskline/heartbeat").equals("offline"));
        }
    }

    @Test
    void the_condition_of_a_trap_and_the_heartbeat_are_kept_for_late_comers() throws Exception {
        try (EmbeddedBroker broker = EmbeddedBroker.start(folder, "127.0.0.1", 0)) {
            BrokerPublisher publisher = new BrokerPublisher(
                    broker.address(), "teller", new Topics("traps"), () -> BrokerSourceContract.NOON, new Random(3));
            publisher.start();
            Await.until("connected", () -> publisher.state().connected());
            publisher.condition("Mill Race", "occupied".getBytes(StandardCharsets.UTF_8));
            publisher.heartbeat("alive".getBytes(StandardCharsets.UTF_8));

            assertThat(firstRetained(broker, "traps/Mill Race/condition")).isEqualTo("occupied");
            assertThat(firstRetained(broker, "traps/duskline/heartbeat")).isEqualTo("alive");
            publisher.close();
            assertThat(firstRetained(broker, "traps/duskline/heartbeat")).isEqualTo("offline");
        }
    }

    @Test
    void an_alert_that_the_broker_cannot_take_is_given_back_to_the_caller() throws Exception {
        int port = Mosquitto.freePort();
        try (BrokerPublisher publisher = new BrokerPublisher(
                BrokerAddress.of("mqtt://127.0.0.1:" + port),
                "teller",
                new Topics("traps"),
                () -> BrokerSourceContract.NOON,
                new Random(3))) {
            publisher.start();
            Await.until(
                    "the failure was noted", () -> publisher.state().trouble().isPresent());
            assertThatThrownBy(() -> publisher.alert("Mill Race", new byte[0]))
                    .isInstanceOf(BrokerUnreachable.class)
                    .hasMessageContaining("Nothing answers at");
        }
    }

    private static BrokerSource listen(EmbeddedBroker broker, MessageSink sink) {
        BrokerSource source = new BrokerSource(
                broker.address(),
                "duskline",
                new Topics("traps"),
                sink,
                () -> BrokerSourceContract.NOON,
                new Random(1));
        source.start();
        return source;
    }

    private static String firstRetained(EmbeddedBroker broker, String topic) throws Exception {
        List<String> heard = new CopyOnWriteArrayList<>();
        try (MqttClient client =
                new MqttClient(broker.address().socketUri(), MqttClient.generateClientId(), new MemoryPersistence())) {
            client.connect();
            client.subscribe(topic, 1, (where, message) -> heard.add(new String(message.getPayload())));
            Await.until("something is kept at " + topic, () -> !heard.isEmpty());
            client.disconnect();
        }
        return heard.get(0);
    }
}
