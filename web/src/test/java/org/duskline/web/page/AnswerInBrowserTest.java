package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Browser.NewContextOptions;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.Said;
import org.duskline.analyzer.visit.VisitKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AnswerInBrowserTest {
    private static final List<String> WCAG_2_2_AA = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

    @RegisterExtension
    static final Browser BROWSER = new Browser();

    @TempDir
    Path folder;

    private final List<String> complaints = new ArrayList<>();
    private AnswerHouse house;
    private BrowserContext context;
    private Page page;

    @BeforeEach
    void openHouse() {
        house = new AnswerHouse(folder, true);
    }

    @AfterEach
    void close() {
        if (context != null) {
            context.close();
        }
        house.close();
    }

    private void visit(String path, int width, int height, ColorScheme light) {
        context = BROWSER.window(
                new NewContextOptions().setViewportSize(width, height).setColorScheme(light));
        page = context.newPage();
        page.onConsoleMessage(message -> {
            if ("error".equals(message.type())) {
                complaints.add(message.text());
            }
        });
        page.navigate("http://127.0.0.1:" + house.port + path);
    }

    private void tap(String button) {
        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName(button).setExact(true))
                .click();
    }

    private List<Said> given() {
        return house.answers.to(AnswerHouse.SWARM.trap(), AnswerHouse.SWARM.kind(), AnswerHouse.SWARM.onset()).stream()
                .map(Answer::said)
                .toList();
    }

    @Test
    void a_reader_of_a_message_opens_its_link_and_answers_with_one_tap_and_later_says_what_it_was() {
        visit("/answer?link=" + house.link(AnswerHouse.SWARM), 390, 844, ColorScheme.DARK);
        assertThat(given()).isEmpty();
        tap("I’m going");
        page.getByText("Oda is going").waitFor();
        tap("Closed");
        page.getByText("Oda has closed it").waitFor();
        page.getByLabel("A swarm").check();
        page.getByLabel("Note").fill("two straps");
        tap("That is what it was");
        page.getByText("Oda: it was a swarm: two straps").waitFor();
        assertThat(given()).containsExactly(Said.GOING, Said.CLOSED, Said.SWARM);
        assertThat(house.visits.all())
                .singleElement()
                .satisfies(kept -> assertThat(kept.visit().kind()).isEqualTo(VisitKind.CLOSED));
        assertThat(complaints).isEmpty();
    }

    @Test
    void an_alert_on_the_page_is_answered_from_its_story() {
        visit("/alerts", 390, 844, ColorScheme.LIGHT);
        page.locator("a[href='" + Links.answer(AnswerHouse.SWARM) + "']")
                .first()
                .click();
        tap("Seen");
        page.getByText("keeper has seen it").waitFor();
        assertThat(given()).containsExactly(Said.SEEN);
        assertThat(complaints).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"390,844,LIGHT", "390,844,DARK", "1280,800,LIGHT", "1280,800,DARK"})
    void the_page_passes_the_rules_of_wcag_and_fits_the_width(int width, int height, ColorScheme light) {
        visit(Links.answer(AnswerHouse.SWARM), width, height, light);
        tap("Seen");
        page.getByText("keeper has seen it").waitFor();
        assertThat(new AxeBuilder(page).withTags(WCAG_2_2_AA).analyze().getViolations())
                .extracting(rule -> rule.getId() + " " + rule.getNodes().get(0).getHtml())
                .isEmpty();
        assertThat((Integer) page.evaluate("document.documentElement.scrollWidth"))
                .isLessThanOrEqualTo(width);
        assertThat(complaints).isEmpty();
    }
}
