package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.Said;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitted;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A swarm that was told under thresholds which Ida had adopted, was borne out, and was answered by Oda. */
class StoryPagesTest {
    private static final Instant RAISED = InventedLine.ARRIVAL.plus(Duration.ofMinutes(8));
    private static final Instant STAYED = InventedLine.ARRIVAL.plus(Duration.ofHours(3));

    @TempDir
    Path folder;

    private Store store;
    private Pages pages;
    private PlainBrowser browser;

    @BeforeEach
    void a_swarm_is_told_and_answered() {
        store = Store.open(folder.resolve("duskline.db"));
        FindingLog findings = new FindingLog(store);
        AnswerLog answers = AnswerLog.open(store);
        ThresholdBook book = ThresholdBook.open(store);
        book.adopt(
                new Thresholds(0.5, 40, 1.2, 3, 10, 6, 3.4),
                InventedLine.ARRIVAL.minus(Duration.ofDays(9)),
                "Ida",
                "Too many drives for rain.",
                "");
        Finding first = swarm(Stage.RAISED, RAISED, 0.992, "A swarm is moving in: +1.42 kg in 22 min");
        findings.keep(List.of(first), 1, (handle, changes) -> {});
        findings.keep(
                List.of(swarm(Stage.STRENGTHENED, STAYED, 0.999, "It stayed past dusk"), InventedFindings.silence()),
                2,
                (handle, changes) -> {});
        answers.record(
                new Answer(
                        first.trap(),
                        Kind.MOVE_IN,
                        first.onset(),
                        Said.SWARM,
                        "a fine one",
                        STAYED.plusSeconds(60),
                        "Oda"),
                Optional.empty());
        pages = new Pages(
                new InventedLine(InventedLine.Mood.BUSY),
                OpenHouse.ENTRANCE,
                () -> InventedLine.NOW,
                List.of(new StoryPages(
                        new InventedLine(InventedLine.Mood.BUSY), findings, answers, book, () -> InventedLine.NOW)));
        browser = new PlainBrowser(pages.start("127.0.0.1", 0));
    }

    @AfterEach
    void close() {
        pages.stop();
        store.close();
    }

    private static Finding swarm(Stage stage, Instant changed, double probability, String summary) {
        return new Finding(
                "Alder Sluice",
                "n10",
                Kind.MOVE_IN,
                InventedLine.ARRIVAL,
                RAISED,
                stage,
                changed,
                probability,
                summary,
                List.of(
                        new Evidence("no rain on the line", 0.5),
                        new Evidence("2,310 more in than out", 7),
                        new Evidence("two wild swings around it", -3.5)),
                Map.of(Rival.SWARM, 0.992, Rival.HANDS, 0.008),
                Optional.of(new SwarmSize(1.42, 1.31, 1.54, 11_200)),
                2);
    }

    private String told(String place) throws Exception {
        return browser.get(
                        place + "?" + Links.storyPage(InventedFindings.swarm()).split("\\?")[1])
                .body();
    }

    @Test
    void the_weightiest_evidence_comes_first_and_each_piece_says_which_way_it_speaks() throws Exception {
        String page = told("/story");
        assertThat(page)
                .containsSubsequence("2,310 more in than out", "two wild swings", "no rain on the line")
                .contains("Two pieces speak for it, 1 against.")
                .contains("Before anything was measured it stood at 2 to 1 for it");
        assertThat(page.replaceAll("\\s+", " "))
                .contains("against: </span><span>two wild swings around it")
                .contains("x=\"50.0%\" y=\"4\" width=\"50.0%\"")
                .contains("x=\"25.0%\" y=\"4\" width=\"25.0%\"");
    }

    @Test
    void what_was_said_first_stays_and_what_followed_is_told_in_order() throws Exception {
        assertThat(told("/story"))
                .containsSubsequence(
                        "A swarm is moving in: +1.42 kg",
                        "It stayed past dusk.",
                        "raised",
                        "borne out since",
                        "It stayed past dusk");
    }

    @Test
    void it_had_to_pass_the_thresholds_that_ida_had_adopted_and_says_by_how_much() throws Exception {
        JsonNode story = new ObjectMapper().readTree(told("/api/story"));
        assertThat(story.get("version").get("by").asText()).isEqualTo("Ida");
        assertThat(story.get("passed").get(0).get("found").asText()).isEqualTo("124 to 1");
        assertThat(story.get("passed").get(0).get("needed").asText()).isEqualTo("40 to 1");
        assertThat(story.get("passed").get(0).get("margin").asText()).startsWith("3.1 times");
        assertThat(story.get("passed").get(1).get("margin").asText()).isEqualTo("0.92 kg over");
    }

    @Test
    void page_program_and_plain_text_say_who_answered_what() throws Exception {
        assertThat(told("/story")).contains("Oda: it was a swarm: a fine one");
        assertThat(told("/api/story.txt"))
                .contains("Oda: it was a swarm: a fine one", "  +7.0  2,310 more in than out");
        assertThat(new ObjectMapper()
                        .readTree(told("/api/story"))
                        .get("answers")
                        .get(0)
                        .get("by")
                        .asText())
                .isEqualTo("Oda");
    }

    @Test
    void the_picture_that_went_with_the_message_is_drawn_again_for_who_asks() throws Exception {
        HttpResponse<String> picture = browser.get(
                "/story.png?" + Links.storyPage(InventedFindings.swarm()).split("\\?")[1]);
        assertThat(picture.statusCode()).isEqualTo(200);
        assertThat(picture.headers().firstValue("Content-Type")).contains("image/png");
        assertThat(picture.body()).contains("IHDR");
    }

    @Test
    void a_silent_node_has_a_story_without_empty_tables() throws Exception {
        String page = browser.get(Links.storyPage(InventedFindings.silence())).body();
        assertThat(page)
                .contains("Nothing heard for 9 h")
                .doesNotContain("What it rests on", "What it had to pass", "What it may have been", "other thresholds");
    }

    @Test
    void a_finding_that_is_not_kept_is_said_to_be_missing() throws Exception {
        assertThat(browser.get("/story?finding=move-in~2026-01-01T00:00:00Z~Nowhere")
                        .statusCode())
                .isEqualTo(404);
    }

    @Test
    void scouts_are_measured_by_their_crossings_and_a_trap_without_a_scale_by_no_weight() {
        Finding scouts = new Finding(
                "Old Kiln",
                "n15",
                Kind.SCOUTING,
                RAISED,
                RAISED,
                Stage.RAISED,
                RAISED,
                0.9,
                "Scouts at the entrance",
                List.of(new Evidence("4.2 crossings a minute for half an hour (threshold 0.8)", 1.4)),
                Map.of(Rival.SCOUTS, 0.9),
                Optional.empty(),
                1);
        assertThat(Passed.of(scouts, Thresholds.defaults(), Fitted.BOTH))
                .containsExactly(new Passed(
                        "Crossings that count as scouts", "4.2 a minute", "0.8 a minute", "3.4 a minute over"));
        assertThat(Passed.of(InventedFindings.likelySwarm(), Thresholds.defaults(), Fitted.COUNTER))
                .singleElement()
                .satisfies(odds -> assertThat(odds.margin()).isEqualTo("not reached"));
    }
}
