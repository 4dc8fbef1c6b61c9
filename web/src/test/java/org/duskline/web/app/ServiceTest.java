package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.Topics;
import org.duskline.collector.store.Store;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.Mosquitto;
import org.duskline.collector.testing.Needs;
import org.duskline.collector.testing.Subscriber;
import org.duskline.web.page.board.Habits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ServiceTest {
    @TempDir
    Path folder;

    @Test
    void a_reading_typed_by_hand_at_an_external_broker_is_stored_and_shown_on_the_traps_page() throws Exception {
        Path publisher = Needs.program("mosquitto_pub");
        try (Mosquitto broker = Mosquitto.openToAll(folder.resolve("mosquitto"), Mosquitto.freePort())
                .start()) {
            Wishes wishes = wishes(Optional.of(BrokerAddress.of(broker.address())), 0);
            try (Service service = Service.start(wishes, Clock.systemUTC())) {
                Await.until("the reading is on the page", () -> {
                    publish(publisher, broker.port());
                    return page(service, "/traps/Mill%20Race").contains("<td>8.10</td>");
                });
            }
        }
        try (Store store = Store.open(folder.resolve("duskline.db"))) {
            assertThat(store.samples().lastPack()).isPositive();
        }
    }

    private static void publish(Path publisher, int port) throws Exception {
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
                "[{\"n\":\"weight\",\"u\":\"kg\",\"v\":8.1}]");
        assertThat(new ProcessBuilder(command).start().waitFor()).isZero();
    }

    @Test
    void without_a_broker_of_the_keepers_the_service_runs_one_and_says_at_it_that_it_is_alive() throws Exception {
        List<String> heard = new CopyOnWriteArrayList<>();
        try (Service service = Service.start(wishes(Optional.empty(), 0), Clock.systemUTC());
                Subscriber subscriber = Subscriber.to(
                        service.broker(),
                        "traps/duskline/heartbeat",
                        (topic, payload) -> heard.add(new String(payload)))) {
            Await.until("it says so", () -> heard.stream().anyMatch(words -> words.startsWith("online ")));
            assertThat(page(service, "/")).contains("<html");
        }
    }

    @Test
    void pages_that_cannot_have_their_port_say_which_and_what_to_do_and_leave_nothing_open() throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Wishes wishes = wishes(Optional.empty(), taken.getLocalPort());
            assertThatThrownBy(() -> Service.start(wishes, Clock.systemUTC()))
                    .isInstanceOf(Failure.class)
                    .hasMessageContaining("127.0.0.1:" + taken.getLocalPort())
                    .hasMessageContaining("take another port");
        }
        try (Service again = Service.start(wishes(Optional.empty(), 0), Clock.systemUTC())) {
            assertThat(again.pagesAddress()).startsWith("http://127.0.0.1:");
        }
    }

    private static String page(Service service, String path) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create(service.pagesAddress() + path))
                .build();
        return HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
    }

    private Wishes wishes(Optional<BrokerAddress> broker, int pagesPort) throws Exception {
        return new Wishes(
                folder.resolve("duskline.db"),
                Optional.of(RecordedSeason.line(folder)),
                broker,
                new Wishes.OwnBroker(folder.resolve("own-broker"), "127.0.0.1", 0),
                "duskline",
                new Topics("traps"),
                "127.0.0.1",
                pagesPort,
                true,
                Wishes.Outside.NONE,
                Habits.USUAL);
    }
}
