package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.StreamSupport;
import org.duskline.analyzer.finding.Finding;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** "Why was nothing told?" asked of the demo's valley. */
class WhyPagesTest {
    @TempDir
    static Path folder;

    private static DemoValley valley;
    private static Pages pages;
    private static PlainBrowser browser;

    @BeforeAll
    static void the_valley_is_watched() {
        valley = new DemoValley(folder);
        pages = new Pages(
                valley.board,
                OpenHouse.ENTRANCE,
                () -> DemoValley.NOW,
                List.of(new WhyPages(valley.board, valley.store, valley.findings, valley.book)));
        browser = new PlainBrowser(pages.start("127.0.0.1", 0));
    }

    @AfterAll
    static void all_is_put_away() {
        pages.stop();
        valley.close();
    }

    private static HttpResponse<String> asked(String start, String trap, Instant from, Instant until) throws Exception {
        return browser.get(start + Links.why(trap, from, until));
    }

    private static JsonNode nearest(JsonNode answer, String kind) {
        return StreamSupport.stream(answer.get("nearest").spliterator(), false)
                .filter(one -> one.get("kind").asText().equals(kind))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void a_stretch_in_which_a_swarm_was_told_says_so_and_leads_to_its_story() throws Exception {
        Finding told = valley.falseAlarm();
        Instant from = told.onset().minus(Duration.ofHours(6));
        Instant until = told.raised().plus(Duration.ofHours(6));
        JsonNode moveIn = nearest(
                new ObjectMapper()
                        .readTree(asked("/api", told.trap(), from, until).body()),
                "move-in");
        assertThat(moveIn.get("heldBack").asText()).isEqualTo("Nothing: it was told.");
        assertThat(moveIn.get("odds").asDouble())
                .isGreaterThanOrEqualTo(moveIn.get("needed").asDouble());
        assertThat(Instant.parse(moveIn.get("at").asText())).isBetween(told.onset(), until);

        assertThat(asked("", told.trap(), from, until).body())
                .contains("Nothing: it was told.", Links.storyPage(told).replace("&", "&amp;"), "told from 20 to 1 on");
    }

    @Test
    void a_night_in_which_no_bee_flew_says_what_was_missing_and_shows_no_number_that_is_none() throws Exception {
        Finding told = valley.falseAlarm();
        Instant night = told.onset().minus(Duration.ofDays(2)).plus(Duration.ofHours(10));
        HttpResponse<String> page = asked("", told.trap(), night, night.plus(Duration.ofHours(5)));
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body())
                .contains("The weight never grew", "No swarm lived in the trap.")
                .doesNotContain("NaN", "Optional", "null");
        JsonNode departure = nearest(
                new ObjectMapper()
                        .readTree(asked("/api", told.trap(), night, night.plus(Duration.ofHours(5)))
                                .body()),
                "departure");
        assertThat(departure.has("odds")).isFalse();
        assertThat(departure.has("at")).isFalse();
    }

    @Test
    void a_month_at_once_is_refused_in_words_with_the_form_to_ask_for_less() throws Exception {
        Instant from = DemoValley.NOW.minus(Duration.ofDays(30));
        HttpResponse<String> page = asked("", "Ropewalk", from, DemoValley.NOW);
        assertThat(page.statusCode()).isEqualTo(400);
        assertThat(page.body()).contains("at most 7 days", "name=\"from\"", "name=\"until\"");
        HttpResponse<String> answer = asked("/api", "Ropewalk", from, DemoValley.NOW);
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(new ObjectMapper().readTree(answer.body()).get("detail").asText())
                .contains("at most 7 days");
    }

    @Test
    void a_keyboard_is_enough_because_the_form_takes_the_traps_own_clock() throws Exception {
        HttpResponse<String> byTheClock =
                browser.get("/api/traps/Ropewalk/why?from=2026-05-12T08:00&until=2026-05-12T20:00");
        JsonNode answer = new ObjectMapper().readTree(byTheClock.body());
        Instant from = Instant.parse(answer.get("from").asText());
        assertThat(from.atZone(valley.store
                                .line()
                                .trap("Ropewalk")
                                .orElseThrow()
                                .zone())
                        .getHour())
                .isEqualTo(8);
        assertThat(browser.get("/api/traps/Ropewalk/why?from=noonish&until=2026-05-12T20:00")
                        .statusCode())
                .isEqualTo(400);
    }

    @Test
    void a_trap_that_is_not_on_the_line_is_said_to_be_missing() throws Exception {
        assertThat(browser.get("/traps/Nowhere/why").statusCode()).isEqualTo(404);
    }
}
