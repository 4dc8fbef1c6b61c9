package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;

/** What the hours and the night after an alarm make of it. */
class AfterTheAlarmTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);
    private static final Trap WEIR = new Trap("Heron Weir", 47.01, 8.0, TrapDays.TRAP.zone());

    @Test
    void a_swarm_told_while_it_came_in_is_weighed_once_it_is_in() {
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH).hears(quietThenSwarm());
        assertThat(trap.moveIns(Stage.RAISED))
                .singleElement()
                .satisfies(finding -> assertThat(size(finding).kg()).isLessThan(1.2));
        assertThat(trap.moveIns(Stage.ARRIVED)).singleElement().satisfies(finding -> {
            assertThat(size(finding).kg()).isBetween(1.3, 1.5);
            assertThat(finding.onset())
                    .isEqualTo(trap.moveIns(Stage.RAISED).get(0).onset());
        });
    }

    @Test
    void a_swarm_that_only_a_counter_saw_is_reckoned_once_it_is_in() {
        WatchedTrap trap = new WatchedTrap(Fitted.COUNTER).hears(quietThenSwarm());
        assertThat(trap.moveIns(Stage.ARRIVED)).singleElement().satisfies(finding -> {
            assertThat(size(finding).lowKg()).isLessThan(1.4);
            assertThat(size(finding).highKg()).isGreaterThan(1.4);
            assertThat(size(finding).kg())
                    .isGreaterThan(size(trap.moveIns(Stage.RAISED).get(0)).kg());
        });
    }

    private static TrapDays quietThenSwarm() {
        return new TrapDays(33, TWO_MINUTES)
                .crossings(4)
                .until("22T12:30")
                .swarm(1.4, Duration.ofMinutes(18))
                .until("22T14:00");
    }

    private static SwarmSize size(Finding finding) {
        return finding.size().orElseThrow();
    }

    @Test
    void a_box_that_is_warm_through_the_night_bears_the_swarm_out() {
        WatchedTrap trap = new WatchedTrap(Fitted.SCALE)
                .hears(new TrapDays(31, TWO_MINUTES)
                        .boxAbove(0.5)
                        .until("22T12:30")
                        .swarm(1.4, Duration.ofMinutes(18))
                        .boxAbove(9)
                        .until("23T12:00"));
        assertThat(trap.moveIns(Stage.STRENGTHENED)).hasSize(1);
        assertThat(trap.moveIns(Stage.WITHDRAWN)).isEmpty();
        assertThat(trap.condition()).isEqualTo(Condition.OCCUPIED);
    }

    @Test
    void kilos_that_leave_the_box_as_cold_as_ever_are_taken_back_with_the_reason() {
        WatchedTrap trap = new WatchedTrap(Fitted.SCALE, Beyond.DAYS_AFTER)
                .hears(new TrapDays(32, TWO_MINUTES)
                        .boxAbove(0.5)
                        .until("22T12:30")
                        .swarm(0.6, Duration.ofMinutes(18))
                        .until("23T12:00"));
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(1);
        assertThat(trap.moveIns(Stage.WITHDRAWN))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("as cold as on its empty nights"));
    }

    @Test
    void without_the_evidence_of_warmth_the_same_night_says_nothing() {
        WatchedTrap trap = new WatchedTrap(Fitted.SCALE, Beyond.DAYS_AFTER, Beyond.WARMTH)
                .hears(new TrapDays(32, TWO_MINUTES)
                        .boxAbove(0.5)
                        .until("22T12:30")
                        .swarm(0.6, Duration.ofMinutes(18))
                        .until("23T12:00"));
        assertThat(trap.moveIns(Stage.WITHDRAWN)).isEmpty();
    }

    @Test
    void scouts_that_fall_silent_elsewhere_are_asked_for_once_two_hours_are_past() {
        TrapDays elsewhere = new TrapDays(38, TWO_MINUTES).crossings(2).until("22T12:40");
        elsewhere.crossings(0.02).until("22T16:00");
        List<Sample> scouted = elsewhere.samples();
        List<Sample> taken = new TrapDays(37, TWO_MINUTES)
                .until("22T12:30")
                .swarm(1.4, Duration.ofMinutes(18))
                .crossings(20)
                .until("22T16:00")
                .samples();
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH);
        LineWatch watch = trap.watch();
        watch.watch(WEIR, Fitted.COUNTER, List.of());
        for (int i = 0; i < taken.size(); i++) {
            Sample other = scouted.get(Math.min(i, scouted.size() - 1));
            watch.take(WEIR.name(), "n02", Fitted.COUNTER, List.of(other), other.time());
            trap.hears(taken.get(i));
        }
        TrapSurroundings surroundings = new TrapSurroundings(TrapDays.TRAP, watch.traps(), Set.of());
        long onset = trap.moveIns(Stage.RAISED).get(0).onset().toEpochMilli();
        assertThat(surroundings.scoutsSilenced(onset, onset + 2 * 3_600_000L)).isEqualTo(1);
    }
}
