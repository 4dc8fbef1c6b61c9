package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Optional;
import org.duskline.collector.intake.BrokerAddress;
import org.duskline.collector.intake.Topics;
import org.duskline.collector.testing.AnsweringNode;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.Mosquitto;
import org.duskline.collector.testing.Needs;
import org.duskline.web.page.PlainBrowser;
import org.duskline.web.page.board.Habits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A keeper at a node's page, the service, a broker and a board that answers by the wire contract. */
class NodeSettingsTest {
    @TempDir
    Path folder;

    @Test
    void settings_from_the_page_reach_the_board_and_its_answer_comes_back_to_the_page() throws Exception {
        try (Service service = Service.start(wishes(Optional.empty()), Clock.systemUTC());
                AnsweringNode node = AnsweringNode.at(service.broker(), "n07")) {
            theWholeStory(service, node);
        }
    }

    @Test
    void the_same_at_a_broker_of_the_keepers() throws Exception {
        Needs.program("mosquitto");
        try (Mosquitto broker = Mosquitto.openToAll(folder.resolve("mosquitto"), Mosquitto.freePort())
                        .start();
                Service service =
                        Service.start(wishes(Optional.of(BrokerAddress.of(broker.address()))), Clock.systemUTC());
                AnsweringNode node = AnsweringNode.at(service.broker(), "n07")) {
            theWholeStory(service, node);
        }
    }

    private static void theWholeStory(Service service, AnsweringNode node) throws Exception {
        PlainBrowser keeper =
                new PlainBrowser(java.net.URI.create(service.pagesAddress()).getPort());
        Await.until(
                "the board was told a tare number to begin with",
                () -> page(keeper).contains("Revision 1 is in force"));

        HttpResponse<String> sent = keeper.fill(
                "/node/n07", "/node/n07/settings", Map.of("period", "60", "quick-period", "20", "quick", "on"));
        assertThat(sent.statusCode()).isEqualTo(303);
        Await.until("the new period is in force", () -> page(keeper).contains("Revision 2 is in force"));
        assertThat(node.heard().get(node.heard().size() - 1)).contains("\"n\":\"period\",\"u\":\"s\",\"v\":60");

        keeper.fill("/node/n07", "/node/n07/tare", Map.of("quiet", "yes"));
        Await.until("the tare moved the zero", () -> page(keeper).contains("82,234 converter counts"));

        keeper.fill("/node/n07", "/node/n07/settings", Map.of("period", "3600", "quick-period", "20", "quick", "on"));
        Await.until(
                "the refusal is told in the board's word", () -> page(keeper).contains("refused revision 4"));
        assertThat(page(keeper)).contains("“period”").contains("Eight lanes");
    }

    private static String page(PlainBrowser keeper) throws Exception {
        return keeper.get("/node/n07").body();
    }

    private Wishes wishes(Optional<BrokerAddress> broker) throws Exception {
        return new Wishes(
                folder.resolve("duskline.db"),
                Optional.of(RecordedSeason.line(folder)),
                broker,
                new Wishes.OwnBroker(folder.resolve("own-broker"), "127.0.0.1", 0),
                "duskline",
                new Topics("traps"),
                "127.0.0.1",
                0,
                true,
                Wishes.Outside.NONE,
                Habits.USUAL);
    }
}
