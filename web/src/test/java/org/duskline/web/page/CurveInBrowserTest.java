package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.WaitForSelectorState;
import org.duskline.web.page.InventedLine.Mood;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** The curve of a trap as a keeper reads it: by key, pointer, finger and link. */
class CurveInBrowserTest {
    @RegisterExtension
    static final Browser BROWSER = new Browser();

    private OpenPages pages;
    private Page page;

    @AfterEach
    void close() {
        pages.close();
    }

    @Test
    void the_curve_is_read_and_moved_by_keys_alone() {
        open(1280, 800, ColorScheme.LIGHT);
        pages.visit("/traps/Alder%20Sluice?from=2026-05-12T04:00:00Z&until=2026-05-12T16:00:00Z");
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
        assertThat(pages.complaints()).isEmpty();
    }

    @Test
    void a_link_reopens_the_view_that_it_was_taken_from() {
        open(1280, 800, ColorScheme.LIGHT);
        pages.visit("/traps/Alder%20Sluice");
        page.locator("[data-step=closer]").click();
        page.waitForURL("**from=*");
        String link = page.url();
        page.waitForSelector("#curve[data-busy=false]");
        String drawn = page.locator("#curve").getAttribute("data-drawn");
        pages.visit(link.substring(pages.root().length()));
        assertThat(page.locator("#curve").getAttribute("data-drawn")).isEqualTo(drawn);
        assertThat(page.url()).isEqualTo(link);
    }

    @Test
    void the_pointer_reads_the_rush_and_a_drag_comes_closer() {
        open(1280, 800, ColorScheme.LIGHT);
        pages.visit("/traps/Alder%20Sluice?from=2026-05-12T09:00:00Z&until=2026-05-12T13:00:00Z");
        var plot = page.locator("[data-panel=traffic] .u-over").boundingBox();
        double atRush = plot.x + plot.width * 134 / 240;
        page.mouse().move(atRush, plot.y + 40);
        page.waitForFunction("Number(document.querySelector('[data-read=in]').textContent) > 150");
        assertThat(page.locator("[data-read=time]").innerText()).contains("13:1");

        page.mouse().down();
        page.mouse().move(atRush + plot.width / 4, plot.y + 40);
        page.mouse().up();
        page.waitForURL("**from=2026-05-12T11:1*");
        assertThat(pages.complaints()).isEmpty();
    }

    @Test
    void a_mark_on_the_curve_opens_its_story_by_key_as_by_finger() {
        open(390, 844, ColorScheme.DARK);
        pages.visit("/traps/Alder%20Sluice");
        page.locator("#lane a[aria-label^='A swarm has moved in']").focus();
        assertThat(page.locator("[data-read=time]").innerText()).contains("13:04");
        page.keyboard().press("Enter");
        page.waitForURL("**/story?finding=move-in*");
        assertThat(page.locator("h1").innerText()).contains("Alder Sluice");
        pages.visit("/traps/Alder%20Sluice?span=season");
        page.locator("#lane a.visit").first().click();
        page.waitForURL("**/visits/*");
    }

    @Test
    void a_curve_beside_the_days_before_is_drawn_said_and_reopened_by_its_link() {
        open(1280, 800, ColorScheme.LIGHT);
        pages.visit("/traps/Alder%20Sluice?from=2026-05-12T04:00:00Z&until=2026-05-12T16:00:00Z");
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
        pages.visit(page.url().substring(pages.root().length()));
        assertThat(page.locator("[data-read=beside]").innerText()).contains("2 days before: ");
        assertThat(page.locator("#beside").inputValue()).isEqualTo("3days");
        assertThat(pages.complaints()).isEmpty();
    }

    @Test
    void a_neighbour_is_chosen_by_its_distance_and_leaves_again() {
        open(390, 844, ColorScheme.LIGHT);
        pages.visit("/traps/Alder%20Sluice?span=day");
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
        assertThat(pages.complaints()).isEmpty();
    }

    private void open(int width, int height, ColorScheme light) {
        pages = new OpenPages(BROWSER, Mood.BUSY, width, height, light);
        page = pages.page();
    }
}
