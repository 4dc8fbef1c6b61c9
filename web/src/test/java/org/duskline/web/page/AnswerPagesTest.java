package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskline.web.page.PlainBrowser.leadsTo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.Said;
import org.duskline.analyzer.visit.VisitKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AnswerPagesTest {
    private static final Finding SWARM = AnswerHouse.SWARM;
    private static final String MARK = "phone-0001";

    @TempDir
    Path folder;

    private AnswerHouse house;
    private PlainBrowser browser;

    @BeforeEach
    void open() {
        house = new AnswerHouse(folder, false);
        browser = new PlainBrowser(house.port);
    }

    @AfterEach
    void close() {
        house.close();
    }

    private List<Answer> given(Finding finding) {
        return house.answers.to(finding.trap(), finding.kind(), finding.onset());
    }

    private String page() {
        return Links.answer(SWARM);
    }

    private PlainBrowser ida() throws Exception {
        browser.fill("/sign-in", "/sign-in", Map.of("name", "Ida", "password", AnswerHouse.PASSWORD));
        return browser;
    }

    @Test
    void a_link_from_a_message_answers_without_signing_in_under_its_readers_name() throws Exception {
        String link = house.link(SWARM);
        String page = "/answer?link=" + link;
        assertThat(browser.get(page).body())
                .contains("Alder Sluice", "A swarm has moved in", "kept under the name Oda")
                .doesNotContain("href=\"/line\"");
        HttpResponse<String> answer =
                browser.fill(page, "/answer", Map.of("link", link, "id", MARK, "answer", "going", "note", ""));
        assertThat(leadsTo(answer)).isEqualTo(page);
        assertThat(browser.get(page).body()).contains("Oda is going");
        assertThat(given(SWARM)).singleElement().satisfies(one -> {
            assertThat(one.said()).isEqualTo(Said.GOING);
            assertThat(one.by()).isEqualTo("Oda");
            assertThat(one.at()).isEqualTo(InventedLine.NOW);
        });
        assertThat(leadsTo(browser.get("/line"))).as("it opens nothing else").startsWith("/sign-in");
    }

    @Test
    void who_answered_and_when_stands_on_the_sheet_among_the_alerts_and_on_the_traps_page() throws Exception {
        List<String> pages = List.of("/", "/alerts", "/traps/Alder%20Sluice");
        for (String page : pages) {
            assertThat(ida().get(page).body()).contains("Alder Sluice").doesNotContain("who-answered");
        }
        browser.fill(page(), "/answers", answer("seen", MARK + "a"));
        house.pass(Duration.ofMinutes(5));
        browser.fill(page(), "/answers", answer("going", MARK + "b"));
        for (String page : pages) {
            assertThat(browser.get(page).body())
                    .as(page)
                    .containsOnlyOnce("who-answered")
                    .contains("Ida is going, 19:17")
                    .doesNotContain("Ida has seen it");
        }
        browser.fill(
                page(), "/answers", Map.of("finding", address(), "id", MARK + "c", "what", "rain", "note", "hose"));
        assertThat(browser.get("/alerts").body()).contains("Ida is going, 19:17", "Ida: it was rain, 19:17", "(hose)");
    }

    private static Map<String, String> answer(String said, String mark) {
        return Map.of("finding", address(), "id", mark, "answer", said, "note", "");
    }

    private static String address() {
        return FindingAddress.of(SWARM);
    }

    /** Mail programs and their filters open every link by themselves. */
    @Test
    void looking_at_a_link_changes_nothing_however_it_is_asked() throws Exception {
        String link = house.link(SWARM);
        HttpResponse<String> looked = browser.get("/answer?link=" + link + "&answer=closed&id=" + MARK);
        assertThat(looked.statusCode()).isEqualTo(200);
        assertThat(looked.headers().firstValue("Cache-Control")).contains("no-store");
        assertThat(given(SWARM)).isEmpty();
        assertThat(house.visits.all()).isEmpty();
    }

    @Test
    void a_link_that_was_changed_by_one_letter_is_refused_and_says_what_to_do() throws Exception {
        String link = house.link(SWARM);
        char other = link.charAt(10) == 'A' ? 'B' : 'A';
        String changed = link.substring(0, 10) + other + link.substring(11);
        HttpResponse<String> looked = browser.get("/answer?link=" + changed);
        assertThat(looked.statusCode()).isEqualTo(403);
        assertThat(looked.body())
                .contains("This link does not hold", "Copy it whole from the message")
                .doesNotContain("Alder Sluice");
        String token = browser.token("/answer?link=" + link);
        HttpResponse<String> sent =
                browser.post("/answer", Map.of("link", changed, "id", MARK, "answer", "closed", "token", token));
        assertThat(sent.statusCode()).isEqualTo(403);
        assertThat(given(SWARM)).isEmpty();
    }

    @Test
    void a_link_does_not_hold_for_another_finding_than_its_own() throws Exception {
        String link = house.link(SWARM);
        Finding other = InventedFindings.likelySwarm();
        browser.fill(
                "/answer?link=" + link,
                "/answer",
                Map.of("link", link, "finding", FindingAddress.of(other), "id", MARK, "answer", "seen"));
        assertThat(given(other)).isEmpty();
        assertThat(given(SWARM)).hasSize(1);
    }

    @Test
    void a_link_whose_time_is_over_says_until_when_it_held() throws Exception {
        String link = house.link(SWARM);
        String token = browser.token("/answer?link=" + link);
        house.pass(Duration.ofDays(3));
        HttpResponse<String> looked = browser.get("/answer?link=" + link);
        assertThat(looked.statusCode()).isEqualTo(410);
        assertThat(looked.body()).contains("This link’s time is over", "held until Fri 15 May, 19:12", "Sign in");
        HttpResponse<String> sent =
                browser.post("/answer", Map.of("link", link, "id", MARK, "answer", "going", "token", token));
        assertThat(sent.statusCode()).isEqualTo(410);
        assertThat(given(SWARM)).isEmpty();
    }

    @Test
    void an_answer_without_the_forms_token_is_refused_by_link_and_inside() throws Exception {
        String link = house.link(SWARM);
        browser.get("/answer?link=" + link);
        assertThat(browser.post("/answer", Map.of("link", link, "id", MARK, "answer", "seen"))
                        .statusCode())
                .isEqualTo(403);
        PlainBrowser ida = ida();
        String finding = FindingAddress.of(SWARM);
        assertThat(ida.post("/answers", Map.of("finding", finding, "id", MARK, "answer", "seen"))
                        .statusCode())
                .isEqualTo(403);
        String body = "{\"id\":\"" + MARK + "\",\"finding\":\"" + finding + "\",\"answer\":\"seen\"}";
        assertThat(ida.postJson("/api/answers", body, Map.of()).statusCode()).isEqualTo(403);
        assertThat(given(SWARM)).isEmpty();
    }

    @Test
    void closed_is_a_visit_to_the_trap_too_and_is_written_once_however_often_it_is_sent() throws Exception {
        PlainBrowser ida = ida();
        Map<String, String> form =
                Map.of("finding", FindingAddress.of(SWARM), "id", MARK, "answer", "closed", "agoSeconds", "600");
        for (int time = 0; time < 3; time++) {
            assertThat(leadsTo(ida.fill(page(), "/answers", form))).isEqualTo(page());
            house.pass(Duration.ofMinutes(1));
        }
        assertThat(given(SWARM)).singleElement().satisfies(one -> {
            assertThat(one.said()).isEqualTo(Said.CLOSED);
            assertThat(one.at()).isEqualTo(InventedLine.NOW.minusSeconds(600));
        });
        assertThat(house.visits.of("Alder Sluice")).singleElement().satisfies(kept -> {
            assertThat(kept.visit().kind()).isEqualTo(VisitKind.CLOSED);
            assertThat(kept.visit().by()).isEqualTo("Ida");
            assertThat(kept.visit().at()).isEqualTo(InventedLine.NOW.minusSeconds(600));
        });
    }

    @Test
    void what_it_really_was_is_kept_with_the_keepers_words() throws Exception {
        PlainBrowser ida = ida();
        String finding = FindingAddress.of(SWARM);
        ida.fill(
                page(),
                "/answers",
                Map.of("finding", finding, "id", MARK, "what", "rain", "note", "<b>Lid</b> was soaked"));
        assertThat(house.answers.verdict(SWARM.trap(), SWARM.kind(), SWARM.onset()))
                .hasValueSatisfying(verdict -> assertThat(verdict.said()).isEqualTo(Said.RAIN));
        assertThat(ida.get(page()).body())
                .contains("Ida: it was rain: &lt;b")
                .doesNotContain("<b>Lid")
                .containsPattern("value=\"rain\"[^>]*checked");
    }

    @Test
    void a_false_alarm_leads_on_to_what_deceived_the_detection_and_a_true_one_does_not() throws Exception {
        PlainBrowser ida = ida();
        String tuning = "href=\"" + Links.tuning(SWARM) + "\"";
        String finding = FindingAddress.of(SWARM);
        ida.fill(page(), "/answers", Map.of("finding", finding, "id", MARK, "what", "swarm"));
        assertThat(ida.get(page()).body()).doesNotContain(tuning);
        house.pass(Duration.ofMinutes(1));
        ida.fill(page(), "/answers", Map.of("finding", finding, "id", MARK + "b", "what", "hands"));
        assertThat(ida.get(page()).body()).contains(tuning);
        assertThat(browser.get("/answer?link=" + house.link(SWARM)).body())
                .as("whoever came by a link cannot go there")
                .doesNotContain("/tuning");
    }

    @Test
    void a_program_answers_once_for_each_id_and_is_told_what_stands() throws Exception {
        PlainBrowser ida = ida();
        Map<String, String> token = Map.of("Duskline-Token", ida.token(page()));
        String body = "{\"id\":\"" + MARK + "\",\"finding\":\"" + FindingAddress.of(SWARM)
                + "\",\"answer\":\"closed\",\"what\":\"swarm\",\"note\":\"2 straps\",\"at\":\"2026-05-12T16:50:00Z\"}";
        assertThat(ida.postJson("/api/answers", body, token).statusCode()).isEqualTo(201);
        HttpResponse<String> again = ida.postJson("/api/answers", body.replace("closed", "seen"), token);
        assertThat(again.statusCode()).isEqualTo(200);
        assertThat(given(SWARM)).extracting(Answer::said).containsExactly(Said.CLOSED, Said.SWARM);
        assertThat(house.visits.all()).hasSize(1);
        JsonNode told = new ObjectMapper().readTree(again.body());
        assertThat(told.get(0).get("said").asText()).isEqualTo("closed");
        assertThat(told.get(0).get("at").asText()).isEqualTo("2026-05-12T16:50:00Z");
        assertThat(ida.get("/api" + page()).body()).isEqualTo(again.body());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\"answer\":\"maybe\"",
                "\"note\":\"only this\"",
                "\"answer\":\"seen\",\"at\":\"2026-05-13T09:00:00Z\"",
                "\"answer\":\"seen\",\"at\":\"yesterday\"",
                "\"answer\":\"seen\",\"agoSeconds\":\"-5\"",
                "\"what\":\"going\""
            })
    void an_answer_that_makes_no_sense_is_refused_with_the_reason(String fields) throws Exception {
        PlainBrowser ida = ida();
        Map<String, String> token = Map.of("Duskline-Token", ida.token(page()));
        String body = "{\"id\":\"" + MARK + "\",\"finding\":\"" + FindingAddress.of(SWARM) + "\"," + fields + "}";
        HttpResponse<String> answer = ida.postJson("/api/answers", body, token);
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(new ObjectMapper().readTree(answer.body()).get("detail").asText())
                .isNotBlank();
        assertThat(given(SWARM)).isEmpty();
    }

    @Test
    void only_a_swarm_is_closed_in() throws Exception {
        PlainBrowser ida = ida();
        String page = Links.answer(InventedFindings.robbers());
        assertThat(ida.get(page).body()).contains("value=\"going\"").doesNotContain("value=\"closed\"");
        HttpResponse<String> answer = ida.fill(
                page,
                "/answers",
                Map.of("finding", FindingAddress.of(InventedFindings.robbers()), "id", MARK, "answer", "closed"));
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(answer.body()).contains("is no answer to this. Choose one of seen, going.");
        assertThat(house.visits.all()).isEmpty();
    }

    @Test
    void every_story_leads_to_its_answer() throws Exception {
        String address = Links.answer(SWARM).replace("&", "&amp;");
        assertThat(ida().get("/alerts").body()).contains("href=\"" + address + "\"");
        assertThat(browser.get("/traps/Alder%20Sluice").body()).contains("href=\"" + address + "\"");
        assertThat(browser.get("/answers?finding=move-in~2020-01-01T00:00:00Z~Alder%20Sluice")
                        .statusCode())
                .isEqualTo(404);
    }
}
