package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.WaitForSelectorState;
import java.nio.file.Path;
import java.util.List;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.Said;
import org.duskline.analyzer.visit.VisitKind;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;

/** An answer given where there is no reception: the network is cut in a real browser, and later comes back. */
class AnswerWithoutReceptionTest {
    @RegisterExtension
    static final Browser BROWSER = new Browser();

    @TempDir
    Path folder;

    private AnswerHouse house;
    private BrowserContext phone;
    private Page page;

    @BeforeEach
    void open() {
        house = new AnswerHouse(folder, true);
        phone = BROWSER.phone();
        page = phone.newPage();
        page.navigate("http://127.0.0.1:" + house.port + "/");
        page.waitForSelector("html[data-kept=yes]");
    }

    @AfterEach
    void close() {
        phone.close();
        house.close();
    }

    @Test
    void im_going_said_without_reception_arrives_once_and_stands_on_the_sheet() {
        leaveReception();
        answerFromTheSheet("I’m going");
        assertThat(given()).isEmpty();
        comeBack();
        assertThat(given()).extracting(Answer::said).containsExactly(Said.GOING);
        page.navigate("http://127.0.0.1:" + house.port + "/");
        assertThat(page.locator(".who-answered").innerText()).startsWith("keeper is going");
        assertThat(given()).hasSize(1);
    }

    @Test
    void closed_said_without_reception_is_one_answer_and_one_visit_however_often_it_was_sent() {
        leaveReception();
        answerFromTheSheet("Closed");
        Locator again = page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Closed"));
        assertThat(again.isDisabled()).isTrue();
        // Its first sending arrives and only the word that it did is lost on the way back.
        phone.route("**/answers", route -> {
            route.fetch();
            phone.unroute("**/answers");
            route.abort();
        });
        comeBack();
        assertThat(given()).extracting(Answer::said).containsExactly(Said.CLOSED);
        assertThat(house.visits.all())
                .singleElement()
                .satisfies(kept -> assertThat(kept.visit().kind()).isEqualTo(VisitKind.CLOSED));
    }

    private List<Answer> given() {
        return house.answers.to(AnswerHouse.SWARM.trap(), AnswerHouse.SWARM.kind(), AnswerHouse.SWARM.onset());
    }

    private void leaveReception() {
        phone.setOffline(true);
        house.shut();
    }

    private void answerFromTheSheet(String button) {
        page.locator("[id='tell-" + Links.address("Alder Sluice") + "']").click();
        page.waitForURL("**/answers?**");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(button))
                .click();
        page.waitForSelector("#waiting:not([hidden])");
        assertThat(page.locator("#waiting").innerText())
                .contains("to be sent when there is reception")
                .contains("Answer for Alder Sluice");
    }

    private void comeBack() {
        house.reopen();
        phone.setOffline(false);
        page.waitForCondition(() -> !given().isEmpty());
        page.waitForSelector(
                "#waiting",
                new Page.WaitForSelectorOptions()
                        .setState(WaitForSelectorState.HIDDEN)
                        .setTimeout(60_000));
    }
}
