package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.BrokerPublisher;
import org.duskline.collector.intake.EmbeddedBroker;
import org.duskline.collector.intake.Topics;
import org.duskline.collector.store.Store;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.Mosquitto;
import org.duskline.collector.testing.Subscriber;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CourierTest {
    private static final Instant NOW = Instant.parse("2026-05-12T13:12:10Z");

    @TempDir
    Path folder;

    private int port;

    @BeforeEach
    void choosePort() throws Exception {
        port = Mosquitto.freePort();
    }

    @Test
    void an_alert_written_while_the_broker_was_away_is_told_once_when_it_is_back() throws Exception {
        List<String> heard = new CopyOnWriteArrayList<>();
        try (Store store = Store.open(folder.resolve("duskline.db"));
                BrokerPublisher publisher = publisher()) {
            FindingLog findings = new FindingLog(store);
            AlertBook book = new AlertBook(store);
            publisher.start();
            findings.keep(List.of(InventedFinding.moveIn(Stage.RAISED)), 1, book);
            Courier courier = new Courier(book, publisher, () -> NOW);
            courier.go(Map.of("Mill Race", Condition.FILLING));
            assertThat(book.waiting(10)).hasSize(1);

            try (EmbeddedBroker broker = EmbeddedBroker.start(folder.resolve("broker"), "127.0.0.1", port);
                    Subscriber subscriber = Subscriber.to(
                            broker.address(),
                            "traps/Mill Race/+",
                            (topic, payload) -> heard.add(topic + " " + new String(payload, StandardCharsets.UTF_8)))) {
                Await.until("the alert is told", () -> {
                    courier.go(Map.of("Mill Race", Condition.FILLING));
                    return heard.size() >= 2;
                });
                findings.keep(List.of(InventedFinding.moveIn(Stage.RAISED)), 2, book);
                findings.keep(List.of(InventedFinding.moveIn(Stage.STRENGTHENED)), 3, book);
                Await.until("what came after is told too", () -> {
                    courier.go(Map.of("Mill Race", Condition.OCCUPIED));
                    return heard.size() >= 4;
                });
                publisher.close();
            }
        }
        assertThat(heard.stream().filter(told -> told.startsWith("traps/Mill Race/alert")))
                .satisfiesExactly(
                        told -> assertThat(told).contains("\"stage\":\"raised\""),
                        told -> assertThat(told).contains("\"stage\":\"strengthened\""));
        assertThat(heard)
                .contains("traps/Mill Race/condition filling", "traps/Mill Race/condition occupied")
                .hasSize(4);
    }

    @Test
    void a_program_killed_before_the_confirmation_tells_it_after_its_restart() {
        Path file = folder.resolve("duskline.db");
        try (Store store = Store.open(file)) {
            new FindingLog(store).keep(List.of(InventedFinding.moveIn(Stage.RAISED)), 1, new AlertBook(store));
        }
        try (Store store = Store.open(file)) {
            AlertBook book = new AlertBook(store);
            assertThat(book.waiting(10)).singleElement().satisfies(alert -> {
                assertThat(alert.trap()).isEqualTo("Mill Race");
                assertThat(alert.body()).contains("\"kind\":\"move-in\"");
                book.confirmed(alert.id(), NOW);
            });
            assertThat(book.waiting(10)).isEmpty();
        }
    }

    private BrokerPublisher publisher() {
        return new BrokerPublisher(
                BrokerAddress.of("mqtt://127.0.0.1:" + port),
                "duskline-alerts",
                new Topics("traps"),
                () -> NOW,
                new Random(4));
    }
}
