package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Map;
import org.duskline.collector.instruction.NodeSettings;
import org.duskline.collector.wire.Acknowledgement.QuickMode;
import org.duskline.web.page.InventedLine.Mood;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class NodePageTest {
    private final InventedNodes nodes = new InventedNodes();
    private Pages pages;
    private PlainBrowser browser;

    @BeforeEach
    void start() {
        pages = new Pages(
                new InventedLine(Mood.BUSY), OpenHouse.ENTRANCE, () -> InventedLine.NOW, List.of(new NodePages(nodes)));
        browser = new PlainBrowser(pages.start("127.0.0.1", 0));
    }

    @AfterEach
    void stop() {
        pages.close();
    }

    @Test
    void a_node_shows_what_it_was_told_beside_what_it_says() throws Exception {
        assertThat(get("/node/n10").body())
                .contains("Revision 7 is in force")
                .contains("Alder Sluice")
                .contains("Weir House")
                .contains("3.92 V")
                .contains("Eight lanes")
                .contains("blind for 89 ms")
                .contains("one lane is blocked")
                .contains("4 s from the sample to here")
                .contains("21,470 counts a kilogram from 81,234")
                .contains("cut off before its end")
                .contains("+1.8 g for each degree warmer (95 %: +1.5 to +2.1), from 311 hours")
                .doesNotContain("NaN")
                .doesNotContain("Optional");
    }

    @Test
    void a_refusal_is_told_in_the_nodes_own_word_and_the_form_starts_from_what_is_in_force() throws Exception {
        assertThat(get("/node/n11").body())
                .contains("refused revision 7")
                .contains("“quick-period”")
                .contains("value=\"120\"");
    }

    @Test
    void a_board_that_knows_no_settings_is_not_offered_a_tare_that_would_not_happen() throws Exception {
        assertThat(get("/node/n31").body())
                .contains("never said anything of its settings")
                .contains("Hangs in no trap now")
                .doesNotContain("Tare once")
                .doesNotContain("NaN");
        assertThat(post("/node/n31/tare", Map.of("quiet", "yes")).statusCode()).isEqualTo(422);
        assertThat(nodes.asked()).isEmpty();
    }

    @Test
    void new_settings_are_asked_for_and_keep_the_tare_number() throws Exception {
        HttpResponse<String> answer =
                post("/node/n10/settings", Map.of("period", "240", "quick-period", "15", "quick", "on"));
        assertThat(answer.statusCode()).isEqualTo(303);
        assertThat(answer.headers().firstValue("Location")).hasValue("/node/n10#settings");
        assertThat(nodes.asked()).containsExactly(new NodeSettings(240, 15, QuickMode.ON, 1));
    }

    @Test
    void settings_that_no_node_takes_are_said_so_beside_what_was_typed_and_nothing_is_sent() throws Exception {
        HttpResponse<String> answer =
                post("/node/n10/settings", Map.of("period", "4", "quick-period", "4", "quick", "auto"));
        assertThat(answer.statusCode()).isEqualTo(422);
        assertThat(answer.body())
                .contains("takes 10 to 3600 seconds, not 4")
                .contains("Nothing was sent")
                .contains("value=\"4\"");
        assertThat(post("/node/n10/settings", Map.of("period", "soon", "quick-period", "4", "quick", "auto"))
                        .body())
                .contains("whole number of seconds");
        assertThat(nodes.asked()).isEmpty();
    }

    @Test
    void a_tare_wants_the_keepers_word_that_the_box_hangs_empty_and_raises_the_number_by_one() throws Exception {
        assertThat(post("/node/n10/tare", Map.of()).statusCode()).isEqualTo(422);
        assertThat(nodes.asked()).isEmpty();
        assertThat(post("/node/n10/tare", Map.of("quiet", "yes")).statusCode()).isEqualTo(303);
        assertThat(nodes.asked()).containsExactly(new NodeSettings(180, 20, QuickMode.AUTO, 2));
    }

    @Test
    void a_node_is_found_from_its_trap_and_from_the_line() throws Exception {
        assertThat(get("/traps/Alder%20Sluice").body()).contains("href=\"/node/n10\"");
        assertThat(get("/line").body()).contains("href=\"/node/n10\"").contains("href=\"/node/n31\"");
        assertThat(get("/node/nobody").statusCode()).isEqualTo(404);
    }

    @Test
    void the_api_tells_the_same() throws Exception {
        JsonNode node = new ObjectMapper().readTree(get("/api/nodes/n10").body());
        assertThat(node.at("/told/0/state").asText()).isEqualTo("in-force");
        assertThat(node.at("/acknowledged/periodSeconds").asInt()).isEqualTo(180);
        assertThat(node.at("/deadTimeSeconds").asDouble()).isEqualTo(0.089);
        assertThat(node.at("/drift/kgPerCelsius").asDouble()).isEqualTo(0.0018);
        assertThat(node.at("/drift/corrected").asBoolean()).isTrue();
        assertThat(node.at("/trap").asText()).isEqualTo("Alder Sluice");
    }

    private HttpResponse<String> get(String path) throws Exception {
        return browser.get(path);
    }

    private HttpResponse<String> post(String path, Map<String, String> fields) throws Exception {
        return browser.fill(path.substring(0, path.lastIndexOf('/')), path, fields);
    }
}
