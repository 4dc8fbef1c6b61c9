package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.AxeResults;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.web.page.InventedLine.Mood;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PagesInBrowserTest {
    private static final List<String> WCAG_2_2_AA = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");
    private static final List<String> PAGES = List.of(
            "/",
            "/line",
            "/alerts",
            Links.storyPage(InventedFindings.swarm()),
            Links.storyPage(InventedFindings.silence()),
            "/traps/Alder%20Sluice",
            "/traps/Alder%20Sluice?span=3days&beside=3days",
            "/traps/Tern%20Bank/why",
            "/traps/Three%20Stiles",
            "/traps/Nowhere",
            "/node/n10",
            "/node/n11",
            "/node/n31",
            "/more",
            "/people",
            "/people/1",
            "/messages",
            "/traps/Alder%20Sluice/closing",
            "/traps/Alder%20Sluice/visits/new?what=collected",
            "/visits/1");

    @RegisterExtension
    static final Browser BROWSER = new Browser();

    private OpenPages pages;
    private Page page;

    @AfterEach
    void close() {
        pages.close();
    }

    @ParameterizedTest
    @CsvSource({"390,844,LIGHT", "390,844,DARK", "1280,800,LIGHT", "1280,800,DARK"})
    void every_page_passes_the_rules_of_wcag_and_the_content_security_policy(int width, int height, ColorScheme light) {
        open(Mood.BUSY, width, height, light);
        for (String path : PAGES) {
            pages.visit(path);
            AxeResults results = new AxeBuilder(page).withTags(WCAG_2_2_AA).analyze();
            assertThat(results.getViolations().stream().map(PagesInBrowserTest::told))
                    .as(path)
                    .isEmpty();
            assertThat((Integer) page.evaluate("document.documentElement.scrollWidth"))
                    .as("%s fits the width", path)
                    .isLessThanOrEqualTo(width);
        }
        assertThat(pages.complaints()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(
            value = Mood.class,
            names = {"NO_TRAP", "NO_DATA", "BROKER_DOWN", "DATABASE_BROKEN"})
    void a_bare_or_broken_line_passes_them_too(Mood mood) {
        open(mood, 390, 844, ColorScheme.LIGHT);
        for (String path : List.of("/", "/line", "/alerts")) {
            pages.visit(path);
            assertThat(new AxeBuilder(page)
                            .withTags(WCAG_2_2_AA).analyze().getViolations().stream()
                                    .map(PagesInBrowserTest::told))
                    .as(path)
                    .isEmpty();
        }
    }

    @Test
    void what_is_tapped_on_a_phone_is_large_enough_for_a_glove() {
        open(Mood.BUSY, 390, 844, ColorScheme.LIGHT);
        pages.visit("/traps/Alder%20Sluice");
        for (Locator target : page.locator(".places a, .steps button, .act, .light-switch, summary")
                .all()) {
            if (!target.isVisible()) {
                continue;
            }
            assertThat(target.boundingBox().height).as(target.innerText()).isGreaterThanOrEqualTo(44);
            assertThat(target.boundingBox().width).as(target.innerText()).isGreaterThanOrEqualTo(44);
        }
        var reach = page.locator(".reach").boundingBox();
        assertThat(reach.y).as("within reach of the thumb").isGreaterThan(844 * 0.6);
    }

    @Test
    void a_finding_reaches_an_open_page_by_itself() {
        open(Mood.BUSY, 1280, 800, ColorScheme.LIGHT);
        pages.visit("/alerts");
        page.waitForSelector("#live[data-live=on]");
        Finding fresh = new Finding(
                "Weir House",
                "n19",
                Kind.MOVE_IN,
                InventedLine.NOW.minus(Duration.ofMinutes(9)),
                InventedLine.NOW,
                Stage.RAISED,
                InventedLine.NOW,
                0.9,
                "+1.10 kg in 9 min (threshold 0.60).",
                List.of(),
                Map.of(),
                Optional.empty(),
                3);
        pages.finds(fresh);

        page.waitForSelector("#told a");
        assertThat(page.locator("#told").innerText()).contains("Weir House").contains("A swarm has moved in");
        page.waitForSelector("#region :text('+1.10 kg in 9 min')");
        assertThat(pages.complaints()).isEmpty();
    }

    @Test
    void the_light_is_the_devices_until_chosen_and_stays_chosen() {
        open(Mood.BUSY, 390, 844, ColorScheme.DARK);
        pages.visit("/");
        Object asDevice = page.evaluate("getComputedStyle(document.body).backgroundColor");
        page.locator("#light-switch").click();
        Object day = page.evaluate("getComputedStyle(document.body).backgroundColor");
        assertThat(day).isNotEqualTo(asDevice);
        pages.visit("/line");
        assertThat(page.evaluate("getComputedStyle(document.body).backgroundColor"))
                .isEqualTo(day);
    }

    @Test
    void nothing_moves_while_a_page_comes_up() {
        open(Mood.BUSY, 390, 844, ColorScheme.LIGHT);
        page.addInitScript("window.shifted = 0; new PerformanceObserver((list) => list.getEntries().forEach("
                + "(entry) => { window.shifted += entry.value; })).observe({type: 'layout-shift', buffered: true});");
        for (String path : List.of("/", "/line", "/traps/Alder%20Sluice", "/traps/Three%20Stiles")) {
            pages.visit(path);
            assertThat(((Number) page.evaluate("window.shifted")).doubleValue())
                    .as(path)
                    .isLessThan(0.02);
        }
    }

    @Test
    void tonight_fits_one_sheet_of_paper() {
        open(Mood.BUSY, 1280, 800, ColorScheme.DARK);
        pages.visit("/");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        byte[] pdf = page.pdf(new Page.PdfOptions().setFormat("A4").setPreferCSSPageSize(true));
        String text = new String(pdf, java.nio.charset.StandardCharsets.ISO_8859_1);
        assertThat(text.split("/Type /Page\\b", -1)).hasSize(2);
    }

    private void open(Mood mood, int width, int height, ColorScheme light) {
        pages = new OpenPages(BROWSER, mood, width, height, light);
        page = pages.page();
    }

    private static String told(Rule rule) {
        return rule.getId() + ": " + rule.getHelp() + " "
                + rule.getNodes().stream().map(node -> node.getHtml()).toList();
    }
}
