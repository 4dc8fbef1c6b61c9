package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.evening.EveningSheet;
import org.duskline.analyzer.evening.RoundSettings;
import org.duskline.analyzer.evening.TrapTonight;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.Said;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.web.deliver.Unanswered;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.Tonight;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NotAnsweredTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final Instant NOON = Instant.parse("2026-05-12T11:04:00Z");
    private static final Instant NOW = Instant.parse("2026-05-12T17:00:00Z");
    private static final Finding MILL_RACE = Alarms.moveIn("Mill Race", NOON, NOON.plusSeconds(480));
    private static final Finding HEDGE_END = Alarms.moveIn("Hedge End", NOON, NOON.plusSeconds(900));

    @TempDir
    Path folder;

    private Store store;
    private AnswerLog answers;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("duskline.db"));
        answers = AnswerLog.open(store);
    }

    @AfterEach
    void close() {
        store.close();
    }

    private static TrapTonight occupied(Finding moveIn, Visit... visits) {
        Trap trap = new Trap(moveIn.trap(), 47.5, 14.5, VIENNA);
        return new TrapTonight(trap, Fitted.BOTH, true, Optional.of(moveIn), 9.4, List.of(visits), List.of());
    }

    private List<Unanswered> waiting(LocalDate evening, TrapTonight... traps) {
        EveningSheet sheet = EveningSheet.of(evening, VIENNA, NOW, List.of(traps), RoundSettings.USUAL);
        BrokerLink link = new BrokerLink(true, NOON, "mqtt://localhost:1883");
        Tonight tonight = new Tonight(NOW, link, sheet, Optional.empty(), List.of(), traps.length);
        return new NotAnswered(() -> tonight, answers).get();
    }

    private List<String> names(LocalDate evening, TrapTonight... traps) {
        return waiting(evening, traps).stream().map(one -> one.moveIn().trap()).toList();
    }

    private void answer(Finding finding, Said said, Instant at) {
        answers.record(
                new Answer(finding.trap(), finding.kind(), finding.onset(), said, "", at, "Ida"), Optional.empty());
    }

    @Test
    void every_trap_of_tonights_round_waits_for_an_answer_with_the_hours_in_which_it_can_be_closed() {
        LocalDate evening = LocalDate.of(2026, 5, 12);
        assertThat(waiting(evening, occupied(MILL_RACE), occupied(HEDGE_END)))
                .hasSize(2)
                .allSatisfy(one -> {
                    // Sunset at 47.5 N 14.5 E in mid-May, about 20:25 by summer time, is a value recalled from memory.
                    assertThat(one.closable().atZone(VIENNA).toLocalDate()).isEqualTo(evening);
                    assertThat(one.closable().atZone(VIENNA).getHour()).isBetween(19, 22);
                    assertThat(one.shuts()).isAfter(one.closable());
                });
    }

    @Test
    void a_trap_that_somebody_has_answered_for_today_waits_no_more() {
        answer(MILL_RACE, Said.GOING, NOW);
        assertThat(names(LocalDate.of(2026, 5, 12), occupied(MILL_RACE), occupied(HEDGE_END)))
                .containsExactly("Hedge End");
    }

    @Test
    void an_answer_holds_for_its_own_evening_and_not_for_the_next_while_the_trap_is_open() {
        answer(MILL_RACE, Said.SEEN, NOW);
        assertThat(names(LocalDate.of(2026, 5, 13), occupied(MILL_RACE))).containsExactly("Mill Race");
    }

    @Test
    void a_trap_that_is_closed_waits_no_more() {
        Visit closed = Visit.of("Mill Race", VisitKind.CLOSED, NOW, "Ida");
        assertThat(names(LocalDate.of(2026, 5, 12), occupied(MILL_RACE, closed)))
                .isEmpty();
    }
}
