package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;

/** What the visits that a keeper has written down, at once or later, make of an alarm. */
class RecordedVisitsTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);

    @Test
    void a_collection_that_is_written_down_ends_it_and_the_trap_starts_afresh() {
        TrapDays days = new TrapDays(33, TWO_MINUTES).until("22T12:30").swarm(1.4, Duration.ofMinutes(18));
        days.until("22T20:30").jump(-1.4).until("24T12:30");
        Instant second = days.now();
        days.swarm(1.1, Duration.ofMinutes(16)).until("24T16:00");
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH);
        for (Sample sample : days.samples()) {
            trap.hears(sample);
            if (sample.time().equals(Instant.parse("2031-05-22T20:40:00Z"))) {
                trap.visited(VisitKind.COLLECTED, "22T20:30", sample.time());
            }
        }
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(2);
        assertThat(trap.moveIns(Stage.RAISED).get(1).onset())
                .isBetween(second.minusSeconds(900), second.plusSeconds(900));
        assertThat(trap.moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("taken away"));
    }

    @Test
    void a_visit_written_down_later_takes_the_alarm_back_that_the_keepers_own_hands_had_raised() {
        WatchedTrap trap = new WatchedTrap(Fitted.SCALE)
                .hears(new TrapDays(34, TWO_MINUTES)
                        .until("22T12:30")
                        .swarm(0.5, Duration.ofMinutes(14))
                        .until("22T14:00"));
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(1);

        trap.visited(VisitKind.BAITED, "22T12:35", Instant.parse("2031-05-22T14:10:00Z"));

        assertThat(trap.moveIns(Stage.WITHDRAWN)).hasSize(1);
    }

    @Test
    void a_visit_does_not_hide_a_swarm_that_the_counter_saw() {
        TrapDays days = new TrapDays(35, TWO_MINUTES)
                .until("22T12:30")
                .swarm(1.4, Duration.ofMinutes(18))
                .until("22T14:00");
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH);
        trap.visited(VisitKind.LOOKED, "22T12:20", TrapDays.START);
        trap.hears(days);
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(1);
    }

    @Test
    void a_trap_that_is_shut_is_not_taken_for_empty_because_nobody_flies() {
        TrapDays days = new TrapDays(36, TWO_MINUTES)
                .until("22T12:30")
                .swarm(1.4, Duration.ofMinutes(18))
                .until("24T17:00");
        WatchedTrap trap = new WatchedTrap(Fitted.COUNTER);
        trap.visited(VisitKind.CLOSED, "22T20:40", TrapDays.START);
        trap.hears(days);
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(1);
        assertThat(trap.moveIns(Stage.ENDED)).isEmpty();
    }
}
