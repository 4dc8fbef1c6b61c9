package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.duskline.analyzer.replay.Adopted;
import org.duskline.analyzer.replay.Dial;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.web.deliver.Deliveries;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The demo's false alarm, from the answer to the adopted version, as a keeper sees it. One story, told in order. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TuningInBrowserTest {
    private static final double PATIENCE_MILLIS = 180_000;

    @TempDir
    static Path folder;

    @RegisterExtension
    static final Browser BROWSER = new Browser();

    private static DemoValley valley;
    private static Pages pages;
    private static String root;
    private static int swarms;

    private final List<String> complaints = new ArrayList<>();
    private BrowserContext context;
    private Page page;

    @BeforeAll
    static void the_valley_is_watched() {
        valley = new DemoValley(folder);
        TuningPages tuning = new TuningPages(
                valley.board, valley.findings, valley.answers, valley.book, valley.desk, () -> DemoValley.NOW);
        AnswerPages answers = new AnswerPages(
                valley.board,
                valley.findings,
                valley.answers,
                VisitLog.open(valley.store),
                Deliveries.open(
                                valley.store,
                                new Deliveries.Equipment(Optional.empty(), Optional.empty(), Optional.empty()),
                                () -> DemoValley.NOW,
                                new Random(1))
                        .links(),
                () -> DemoValley.NOW);
        pages = new Pages(valley.board, OpenHouse.ENTRANCE, () -> DemoValley.NOW, List.of(tuning, answers));
        root = "http://127.0.0.1:" + pages.start("127.0.0.1", 0);
        swarms = valley.answerTheSwarms();
    }

    @AfterAll
    static void all_is_put_away() {
        if (pages != null) {
            pages.stop();
            valley.close();
        }
    }

    @AfterEach
    void close() {
        if (context != null) {
            context.close();
        }
    }

    @Test
    @Order(1)
    void a_false_alarm_is_answered_tuned_away_and_adopted_with_no_swarm_lost() {
        open(390, 844, ColorScheme.LIGHT);
        visit(loaded());
        assertThat(page.locator("#loaded-title").innerText()).contains("Saltpan Gate");
        page.locator("button[value=rain]").click();
        page.waitForSelector(".answered");
        assertThat(page.locator(".answered").innerText()).contains("rain");

        turn(Dial.SWARM_KG, 0.8);
        assertThat(page.locator(".outcome-words").innerText()).contains("1 false alarm gone", "no swarm missed");
        Locator row = page.locator(".tried tr", new Page.LocatorOptions().setHasText("Saltpan Gate"));
        assertThat(row.innerText()).contains("not told").contains("a false alarm");
        assertThat(page.locator(".tried tr", new Page.LocatorOptions().setHasText("a swarm"))
                        .count())
                .isEqualTo(swarms);

        page.locator("#why").fill("A garden hose at Saltpan Gate");
        page.locator("#adopt-button").click();
        page.waitForSelector("#version-2.holds");
        assertThat(page.locator("#version-2").innerText())
                .contains("A garden hose at Saltpan Gate")
                .contains("Smallest swarm worth a drive: 0.25 kg, now 0.80 kg")
                .contains("1 false alarm gone");
        Adopted adopted = valley.book.ofLine(DemoValley.NOW);
        assertThat(adopted.version()).isEqualTo(2);
        assertThat(adopted.thresholds().smallestSwarmKg()).isEqualTo(0.8);
        assertThat(complaints).isEmpty();
    }

    @Test
    @Order(2)
    void an_adopted_version_is_gone_back_from_with_a_reason() {
        open(1280, 800, ColorScheme.LIGHT);
        visit("/tuning");
        page.locator("#back-1 summary").click();
        page.locator("#why-1").fill("The hose is gone");
        page.locator("#back-1 button").click();
        page.waitForSelector("#version-3.holds");
        assertThat(page.locator("#version-3").innerText()).contains("back to version 1");
        assertThat(valley.book.ofLine(DemoValley.NOW).thresholds().smallestSwarmKg())
                .isEqualTo(0.25);
    }

    @Test
    @Order(3)
    void one_trap_alone_is_given_other_numbers_until_a_day() {
        open(1280, 800, ColorScheme.DARK);
        visit("/tuning?trap=Saltpan%20Gate");
        turn(Dial.SWARM_KG, 0.8);
        page.locator("#until").fill("2026-06-30");
        page.locator("#why").fill("Only this box stands by a garden");
        page.locator("#adopt-button").click();
        page.waitForSelector("#version-4.holds");
        assertThat(valley.book.inForce("Saltpan Gate", DemoValley.NOW).version())
                .isEqualTo(4);
        assertThat(valley.book.inForce("Ropewalk", DemoValley.NOW).version()).isEqualTo(3);
    }

    @Test
    @Order(4)
    void a_suggestion_is_seen_finishing_and_admits_when_the_answers_support_no_change() {
        open(390, 844, ColorScheme.DARK);
        visit("/tuning");
        page.locator("#suggest").click();
        page.waitForSelector("#searching:not([hidden])");
        page.waitForSelector("#suggested:not(:empty)");
        page.waitForSelector("#searching", new Page.WaitForSelectorOptions().setState(WaitForSelectorState.HIDDEN));
        assertThat(page.locator("#suggested").innerText()).contains("The data do not support a change");
        assertThat(page.locator(".dial.turned").count()).isZero();
        assertThat(complaints).isEmpty();
    }

    @ParameterizedTest
    @Order(5)
    @CsvSource({"390,844,LIGHT", "390,844,DARK", "1280,800,LIGHT", "1280,800,DARK"})
    void the_page_passes_the_rules_of_wcag(int width, int height, ColorScheme light) {
        open(width, height, light);
        visit(loaded());
        turn(Dial.MOVE_IN_ODDS, 80);
        assertThat(new AxeBuilder(page)
                                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"))
                                .analyze()
                                .getViolations()
                                .stream()
                                .map(rule -> rule.getId() + " "
                                        + rule.getNodes().get(0).getHtml()))
                .isEmpty();
        assertThat((Integer) page.evaluate("document.documentElement.scrollWidth"))
                .isLessThanOrEqualTo(width);
        assertThat(complaints).isEmpty();
    }

    @Test
    @Order(6)
    void a_program_is_told_the_same_as_the_page() throws Exception {
        HttpClient client = HttpClient.newHttpClient();
        HttpResponse<String> replay = client.send(
                HttpRequest.newBuilder(
                                URI.create(root + "/api/thresholds/replay?smallestSwarmKg=0.8&trap=Saltpan%20Gate"))
                        .build(),
                HttpResponse.BodyHandlers.ofString());
        JsonNode versions = new ObjectMapper()
                .readTree(client.send(
                                HttpRequest.newBuilder(URI.create(root + "/api/thresholds"))
                                        .build(),
                                HttpResponse.BodyHandlers.ofString())
                        .body());
        assertThat(replay.statusCode()).isEqualTo(200);
        assertThat(new ObjectMapper().readTree(replay.body()).get("words").asText())
                .contains("swarm missed");
        assertThat(versions.size()).isEqualTo(valley.book.versions().size());
        assertThat(versions.get(0).get("thresholds").get("moveInOdds").asDouble())
                .isEqualTo(20);
    }

    @Test
    @Order(7)
    void what_programs_can_ask_about_thresholds_is_described() throws Exception {
        HttpResponse<String> described = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(root + "/api/openapi.json"))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
        JsonNode paths = new ObjectMapper().readTree(described.body()).get("paths");
        assertThat(pages.paths())
                .filteredOn(path -> path.startsWith("/api/thresholds"))
                .hasSize(3)
                .allSatisfy(path -> assertThat(paths.has(path)).isTrue());
    }

    private static String loaded() {
        return "/tuning?finding=" + URLEncoder.encode(FindingAddress.of(valley.falseAlarm()), StandardCharsets.UTF_8);
    }

    private void turn(Dial dial, double value) {
        page.evalOnSelector(
                "#dial-" + dial.key(),
                "(dial, stop) => { dial.value = stop; dial.dispatchEvent(new Event('input')); }",
                String.valueOf(dial.stopFor(value)));
        page.waitForSelector(
                ".outcome[data-whole=true]", new Page.WaitForSelectorOptions().setTimeout(PATIENCE_MILLIS));
    }

    private void open(int width, int height, ColorScheme light) {
        context = BROWSER.window(
                new NewContextOptions().setViewportSize(width, height).setColorScheme(light));
        page = context.newPage();
        page.setDefaultTimeout(PATIENCE_MILLIS);
        page.onPageError(complaints::add);
        page.onConsoleMessage(message -> {
            if (message.type().equals("error")) {
                complaints.add(message.text());
            }
        });
    }

    private void visit(String path) {
        page.navigate(root + path);
    }
}
