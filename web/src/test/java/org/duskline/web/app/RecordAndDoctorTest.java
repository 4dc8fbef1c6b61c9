package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.duskline.collector.intake.EmbeddedBroker;
import org.duskline.collector.intake.RecordedStream;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.Mosquitto;
import org.duskline.collector.testing.Needs;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordAndDoctorTest {
    @TempDir
    Path folder;

    @Test
    void what_a_node_publishes_by_hand_is_recorded_byte_for_byte() throws Exception {
        Path publisher = Needs.program("mosquitto_pub");
        String pack = "[{\"n\":\"weight\",\"u\":\"kg\",\"v\":8.1}]";
        try (Mosquitto broker = Mosquitto.openToAll(folder.resolve("broker"), Mosquitto.freePort())
                .start()) {
            Path stream = folder.resolve("season.jsonl.gz");
            CompletableFuture<Session> recording = CompletableFuture.supplyAsync(() -> Session.with(
                    Map.of("DUSKLINE_MQTT_URL", broker.address()), "record", "--messages", "1", stream.toString()));
            Await.until("the message is recorded", () -> {
                publish(publisher, broker.port(), pack);
                return recording.isDone();
            });
            assertThat(recording.get().exit()).isEqualTo(Exit.DONE);
            assertThat(recording.get().err()).contains("1 messages written");
            try (RecordedStream recorded = RecordedStream.open(stream, spoilt -> {
                throw new AssertionError(spoilt.toString());
            })) {
                assertThat(recorded.next()).satisfies(message -> {
                    assertThat(message.topic()).isEqualTo("traps/n07/readings");
                    assertThat(message.payload()).asString().isEqualTo(pack);
                });
            }
        }
    }

    private static void publish(Path publisher, int port, String pack) throws Exception {
        List<String> command = List.of(
                publisher.toString(),
                "-h",
                "127.0.0.1",
                "-p",
                "" + port,
                "-q",
                "1",
                "-t",
                "traps/n07/readings",
                "-m",
                pack);
        assertThat(new ProcessBuilder(command).start().waitFor()).isZero();
    }

    @Test
    void the_doctor_finds_a_line_a_broker_and_free_ports_in_order() throws Exception {
        try (EmbeddedBroker broker = EmbeddedBroker.start(folder.resolve("broker"), "127.0.0.1", 0)) {
            Path file = settings("""
                    line: %s
                    mqtt: {url: "%s"}
                    pages: {port: 0}
                    """.formatted(RecordedSeason.line(folder), broker.address()));
            Session session = Session.of("doctor", "--config", file.toString());
            assertThat(session.out())
                    .contains(
                            "1 trap in",
                            "lets us in and listen below traps/",
                            "it is made at the first start",
                            "what was published before Duskline's first start is not there any more",
                            "MB free")
                    .doesNotContain("wrong");
            assertThat(session.exit()).isEqualTo(Exit.DONE);
        }
    }

    @Test
    void the_doctor_says_what_to_do_about_a_broker_that_is_away_and_a_line_that_is_damaged() throws Exception {
        Path line = Files.writeString(folder.resolve("line.geojson"), "{\"type\":\"Feature\"}");
        Path file = settings("""
                line: %s
                mqtt: {url: "mqtt://127.0.0.1:%d"}
                """.formatted(line, Mosquitto.freePort()));
        Session session = Session.of("doctor", "--config", file.toString());
        assertThat(session.exit()).isEqualTo(Exit.FAILED);
        assertThat(session.out())
                .contains("wrong  line", "FeatureCollection", "wrong  broker", "Check that the broker runs");
    }

    @Test
    void the_doctor_notes_a_port_that_is_taken_and_a_clock_behind_its_own_messages() throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Path file = settings("""
                    database: duskline.db
                    broker: {port: 0}
                    pages: {port: %d}
                    """.formatted(taken.getLocalPort()));
            Path later = Files.writeString(
                    folder.resolve("later.jsonl"),
                    "{\"received\":1798761600,\"topic\":\"traps/n07/status\",\"text\":\"online\"}\n");
            Session.of("import", "--database", folder.resolve("duskline.db").toString(), later.toString());
            Session session = Session.of("doctor", "--config", file.toString());
            assertThat(session.out())
                    .contains(
                            "note   pages",
                            "is in use",
                            "wrong  clock",
                            "a message was received at 2027-01-01T00:00:00Z");
            assertThat(session.exit()).isEqualTo(Exit.FAILED);
        }
    }

    private Path settings(String text) throws Exception {
        return Files.writeString(folder.resolve("duskline.yaml"), text);
    }
}
