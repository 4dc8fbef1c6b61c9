package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Store;
import org.duskline.web.page.InventedLine.Mood;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** The sheet on a phone that goes out of reach: the network is cut, and later comes back. */
class FieldInBrowserTest {
    @RegisterExtension
    static final Browser BROWSER = new Browser();

    @TempDir
    Path folder;

    private final List<String> complaints = new ArrayList<>();
    private Store store;
    private VisitLog visits;
    private Pages pages;
    private int port;
    private BrowserContext phone;
    private Page page;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("line.db"));
        visits = VisitLog.open(store);
        serve(0);
        phone = BROWSER.phone();
        page = phone.newPage();
        page.onPageError(complaints::add);
    }

    @AfterEach
    void close() {
        phone.close();
        pages.stop();
        store.close();
    }

    private void serve(int wanted) {
        pages = InventedParts.pages(new InventedLine(Mood.BUSY), visits);
        port = pages.start("127.0.0.1", wanted);
    }

    /** Not only the browser believes to be out of reach: nobody answers any more. */
    private void leaveReception() {
        phone.setOffline(true);
        pages.stop();
    }

    private void comeBack() {
        serve(port);
        phone.setOffline(false);
    }

    private void openSheet() {
        page.navigate("http://127.0.0.1:" + port + "/");
        page.waitForSelector("html[data-kept=yes]");
    }

    @Test
    void the_sheet_and_the_pages_of_its_traps_open_without_reception() {
        openSheet();
        leaveReception();
        page.reload();
        assertThat(page.locator("h1").innerText()).isEqualTo("Two traps to close tonight");
        assertThat(page.locator(".cautions").innerText()).contains("Local law");
        page.locator("a[href='/traps/Alder%20Sluice/closing']").first().click();
        page.waitForURL("**/closing");
        assertThat(page.locator("#door summary").innerText()).isEqualTo("Closed");
        assertThat(page.evaluate("getComputedStyle(document.querySelector('.entrance')).borderLeftWidth"))
                .as("the styles are there as well")
                .isEqualTo("6px");
        assertThat(complaints).isEmpty();
    }

    @Test
    void a_closing_without_reception_waits_on_the_phone_and_arrives_once_with_its_own_time() {
        openSheet();
        leaveReception();
        page.navigate("http://127.0.0.1:" + port + "/traps/Alder%20Sluice/closing");
        page.locator("#door summary").click();
        page.locator("#door button[type=submit]").click();
        page.waitForSelector("#door .form-said:not([hidden])");
        assertThat(page.locator("#waiting").innerText())
                .contains("to be sent when there is reception")
                .contains("closed at Alder Sluice");
        assertThat(visits.all()).isEmpty();

        comeBack();
        page.waitForCondition(() -> !visits.all().isEmpty());
        page.waitForSelector(
                "#waiting",
                new Page.WaitForSelectorOptions()
                        .setState(com.microsoft.playwright.options.WaitForSelectorState.HIDDEN));
        page.navigate("http://127.0.0.1:" + port + "/");
        page.waitForTimeout(300);

        assertThat(visits.all()).singleElement().satisfies(kept -> {
            assertThat(kept.visit().kind()).isEqualTo(VisitKind.CLOSED);
            assertThat(kept.visit().trap()).isEqualTo("Alder Sluice");
            assertThat(kept.visit().at()).isBeforeOrEqualTo(InventedLine.NOW);
        });
    }

    @Test
    void what_waits_survives_that_the_page_was_closed() {
        openSheet();
        leaveReception();
        page.navigate("http://127.0.0.1:" + port + "/traps/Alder%20Sluice/visits/new?what=closed");
        page.locator("#note").fill("mesh, two straps");
        page.locator("button[type=submit]").first().click();
        page.waitForSelector(".form-said:not([hidden])");
        page.close();

        comeBack();
        page = phone.newPage();
        page.navigate("http://127.0.0.1:" + port + "/");
        page.waitForCondition(() -> !visits.all().isEmpty());

        assertThat(visits.all().get(0).visit().note()).isEqualTo("mesh, two straps");
    }

    @Test
    void with_reception_the_form_leads_to_what_was_written() {
        openSheet();
        page.navigate("http://127.0.0.1:" + port + "/traps/Alder%20Sluice/visits/new?what=collected");
        page.locator("#massKg").fill("1.46");
        page.locator("button[type=submit]").first().click();
        page.waitForURL(Pattern.compile(".*/visits/\\d+$"));
        assertThat(page.locator("h1").innerText()).isEqualTo("Collected");
        assertThat(page.locator(".checklist li").count()).isEqualTo(8);
        assertThat(visits.all()).hasSize(1);
    }
}
