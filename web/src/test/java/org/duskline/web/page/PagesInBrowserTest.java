package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.deque.html.axecore.results.AxeResults;
import com.deque.html.axecore.results.Rule;
import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.time.Duration;
import java.util.ArrayList;
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

    private final List<String> complaints = new ArrayList<>();
    private InventedLine line;
    private Pages pages;
    private BrowserContext context;
    private Page page;
    private String root;

    @AfterEach
    void close() {
        if (context != null) {
            context.close();
        }
        if (pages != null) {
            pages.stop();
        }
    }

    @ParameterizedTest
    @CsvSource({"390,844,LIGHT", "390,844,DARK", "1280,800,LIGHT", "1280,800,DARK"})
    void every_page_passes_the_rules_of_wcag_and_the_content_security_policy(int width, int height, ColorScheme light) {
        open(Mood.BUSY, width, height, light);
        for (String path : PAGES) {
            visit(path);
            AxeResults results = new AxeBuilder(page).withTags(WCAG_2_2_AA).analyze();
            assertThat(results.getViolations().stream().map(PagesInBrowserTest::told))
                    .as(path)
                    .isEmpty();
            assertThat((Integer) page.evaluate("document.documentElement.scrollWidth"))
                    .as("%s fits the width", path)
                    .isLessThanOrEqualTo(width);
        }
        assertThat(complaints).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(
            value = Mood.class,
            names = {"NO_TRAP", "NO_DATA", "BROKER_DOWN", "DATABASE_BROKEN"})
    void a_bare_or_broken_line_passes_them_too(Mood mood) {
        open(mood, 390, 844, ColorScheme.LIGHT);
        for (String path : List.of("/", "/line", "/alerts")) {
            visit(path);
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
        visit("/traps/Alder%20Sluice");
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
        visit("/alerts");
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
        line.find(fresh);
        pages.announce(new News.Found(fresh));

        page.waitForSelector("#told a");
        assertThat(page.locator("#told").innerText()).contains("Weir House").contains("A swarm has moved in");
        page.waitForSelector("#region :text('+1.10 kg in 9 min')");
        assertThat(complaints).isEmpty();
    }

    @Test
    void the_curve_is_read_and_moved_by_keys_alone() {
        open(Mood.BUSY, 1280, 800, ColorScheme.LIGHT);
        visit("/traps/Alder%20Sluice?from=2026-05-12T04:00:00Z&until=2026-05-12T16:00:00Z");
        Locator slider = page.locator("#panels");
        slider.focus();
        page.keyboard().press("Home");
        String first = slider.getAttribute("aria-valuetext");
        assertThat(first).contains("Tue 12 May, 06:00").contains("in a minute").contains("kilograms");
        page.keyboard().press("ArrowRight");
        assertThat(slider.getAttribute("aria-valuetext")).contains("06:02");
        page.keyboard().press("Shift+ArrowRight");
        assertThat(slider.getAttribute("aria-valuetext")).contains("06:22");
        page.keyboard().press("+");
        page.waitForURL("**from=2026-05-12T07:00:00Z&until=2026-05-12T13:00:00Z");
        page.keyboard().press(".");
        page.waitForURL("**from=2026-05-12T08:30:00Z&until=2026-05-12T14:30:00Z");
        page.keyboard().press("0");
        page.waitForURL("**?span=day");
        assertThat(complaints).isEmpty();
    }

    @Test
    void a_link_reopens_the_view_that_it_was_taken_from() {
        open(Mood.BUSY, 1280, 800, ColorScheme.LIGHT);
        visit("/traps/Alder%20Sluice");
        page.locator("[data-step=closer]").click();
        page.waitForURL("**from=*");
        String link = page.url();
        page.waitForSelector("#curve[data-busy=false]");
        String drawn = page.locator("#curve").getAttribute("data-drawn");
        visit(link.substring(root.length()));
        assertThat(page.locator("#curve").getAttribute("data-drawn")).isEqualTo(drawn);
        assertThat(page.url()).isEqualTo(link);
    }

    @Test
    void the_pointer_reads_the_rush_and_a_drag_comes_closer() {
        open(Mood.BUSY, 1280, 800, ColorScheme.LIGHT);
        visit("/traps/Alder%20Sluice?from=2026-05-12T09:00:00Z&until=2026-05-12T13:00:00Z");
        var plot = page.locator("[data-panel=traffic] .u-over").boundingBox();
        double atRush = plot.x + plot.width * 134 / 240;
        page.mouse().move(atRush, plot.y + 40);
        page.waitForFunction("Number(document.querySelector('[data-read=in]').textContent) > 150");
        assertThat(page.locator("[data-read=time]").innerText()).contains("13:1");

        page.mouse().down();
        page.mouse().move(atRush + plot.width / 4, plot.y + 40);
        page.mouse().up();
        page.waitForURL("**from=2026-05-12T11:1*");
        assertThat(complaints).isEmpty();
    }

    @Test
    void a_mark_on_the_curve_opens_its_story_by_key_as_by_finger() {
        open(Mood.BUSY, 390, 844, ColorScheme.DARK);
        visit("/traps/Alder%20Sluice");
        page.locator("#lane a[aria-label^='A swarm has moved in']").focus();
        assertThat(page.locator("[data-read=time]").innerText()).contains("13:04");
        page.keyboard().press("Enter");
        page.waitForURL("**/story?finding=move-in*");
        assertThat(page.locator("h1").innerText()).contains("Alder Sluice");
        visit("/traps/Alder%20Sluice?span=season");
        page.locator("#lane a.visit").first().click();
        page.waitForURL("**/visits/*");
    }

    @Test
    void a_curve_beside_the_days_before_is_drawn_said_and_reopened_by_its_link() {
        open(Mood.BUSY, 1280, 800, ColorScheme.LIGHT);
        visit("/traps/Alder%20Sluice?from=2026-05-12T04:00:00Z&until=2026-05-12T16:00:00Z");
        page.locator("#beside").selectOption("3days");
        page.waitForURL("**&beside=3days");
        page.waitForSelector(
                ".beside-words:nth-of-type(4)",
                new Page.WaitForSelectorOptions().setState(WaitForSelectorState.ATTACHED));
        assertThat(page.locator(".beside-words").first().textContent())
                .contains("the day before: ")
                .contains("bees in");
        page.waitForSelector("#curve[data-busy=false]");
        page.locator("#panels").focus();
        page.keyboard().press("Home");
        assertThat(page.locator("#panels").getAttribute("aria-valuetext"))
                .contains("the day before: ")
                .contains("3 days before: ");
        visit(page.url().substring(root.length()));
        assertThat(page.locator("[data-read=beside]").innerText()).contains("2 days before: ");
        assertThat(page.locator("#beside").inputValue()).isEqualTo("3days");
        assertThat(complaints).isEmpty();
    }

    @Test
    void a_neighbour_is_chosen_by_its_distance_and_leaves_again() {
        open(Mood.BUSY, 390, 844, ColorScheme.LIGHT);
        visit("/traps/Alder%20Sluice?span=day");
        assertThat(page.locator("#beside option").nth(4).innerText())
                .startsWith("Chapel Nook, ")
                .endsWith(" km off");
        page.locator("#beside").selectOption("trap:Chapel Nook");
        page.waitForURL("**?span=day&beside=trap%3AChapel%20Nook");
        page.waitForSelector("[data-read=beside]:has-text('Chapel Nook: ')");
        page.locator("#beside").selectOption("");
        page.waitForURL("**?span=day");
        page.waitForSelector(
                "[data-read=beside]", new Page.WaitForSelectorOptions().setState(WaitForSelectorState.HIDDEN));
        assertThat(complaints).isEmpty();
    }

    @Test
    void the_light_is_the_devices_until_chosen_and_stays_chosen() {
        open(Mood.BUSY, 390, 844, ColorScheme.DARK);
        visit("/");
        Object asDevice = page.evaluate("getComputedStyle(document.body).backgroundColor");
        page.locator("#light-switch").click();
        Object day = page.evaluate("getComputedStyle(document.body).backgroundColor");
        assertThat(day).isNotEqualTo(asDevice);
        visit("/line");
        assertThat(page.evaluate("getComputedStyle(document.body).backgroundColor"))
                .isEqualTo(day);
    }

    @Test
    void nothing_moves_while_a_page_comes_up() {
        open(Mood.BUSY, 390, 844, ColorScheme.LIGHT);
        page.addInitScript("window.shifted = 0; new PerformanceObserver((list) => list.getEntries().forEach("
                + "(entry) => { window.shifted += entry.value; })).observe({type: 'layout-shift', buffered: true});");
        for (String path : List.of("/", "/line", "/traps/Alder%20Sluice", "/traps/Three%20Stiles")) {
            visit(path);
            assertThat(((Number) page.evaluate("window.shifted")).doubleValue())
                    .as(path)
                    .isLessThan(0.02);
        }
    }

    @Test
    void tonight_fits_one_sheet_of_paper() {
        open(Mood.BUSY, 1280, 800, ColorScheme.DARK);
        visit("/");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        byte[] pdf = page.pdf(new Page.PdfOptions().setFormat("A4").setPreferCSSPageSize(true));
        String text = new String(pdf, java.nio.charset.StandardCharsets.ISO_8859_1);
        assertThat(text.split("/Type /Page\\b", -1)).hasSize(2);
    }

    private void open(Mood mood, int width, int height, ColorScheme light) {
        line = new InventedLine(mood);
        pages = InventedParts.pages(line);
        root = "http://127.0.0.1:" + pages.start("127.0.0.1", 0);
        context = BROWSER.window(new NewContextOptions()
                .setViewportSize(width, height)
                .setHasTouch(width < 500)
                .setColorScheme(light));
        page = context.newPage();
        page.onPageError(complaints::add);
        page.onConsoleMessage(message -> {
            if (message.type().equals("error") && !message.text().contains("404")) {
                complaints.add(message.text());
            }
        });
    }

    private void visit(String path) {
        page.navigate(root + path);
        if (page.locator("#curve").count() > 0) {
            page.waitForSelector("#curve[data-drawn][data-busy=false]");
        }
    }

    private static String told(Rule rule) {
        return rule.getId() + ": " + rule.getHelp() + " "
                + rule.getNodes().stream().map(node -> node.getHtml()).toList();
    }
}
