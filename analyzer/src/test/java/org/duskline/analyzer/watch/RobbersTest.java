package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.detect.Crossings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.collector.trap.Fitted;
import org.junit.jupiter.api.Test;

/**
 * Robbers at the old comb of an empty trap, and what looks like them. That robbers come at once and stay while there is
 * anything to carry off, that ants are through within a few hours, and that scouts come one by one is common practice.
 */
class RobbersTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);

    private final LineWatch watch = new LineWatch(Thresholds.defaults(), 1);

    private List<Kind> told(Fitted fitted, TrapDays days) {
        return findings(fitted, days).stream().map(Finding::kind).distinct().toList();
    }

    private List<Finding> findings(Fitted fitted, TrapDays days) {
        String name = TrapDays.TRAP.name();
        watch.watch(TrapDays.TRAP, fitted, List.of());
        List<Finding> told = new ArrayList<>();
        days.samples().forEach(sample -> told.addAll(watch.take(name, "n01", fitted, List.of(sample), sample.time())));
        return told;
    }

    private static TrapDays quiet(long seed) {
        return new TrapDays(seed, TWO_MINUTES).until("25T10:00");
    }

    /** Scouts who grow to a crowd over eight hours, by the square of the time. */
    private static TrapDays growing(TrapDays days) {
        for (int hour = 10; hour < 18; hour++) {
            double squared = (hour - 9.0) * (hour - 9.0);
            days.crossings(0.4 * squared)
                    .until("25T" + hour + ":30")
                    .crossings(0.6 * squared)
                    .until("25T" + (hour + 1) + ":00");
        }
        return days;
    }

    @Test
    void robbers_who_carry_off_the_old_honey_are_told_where_both_sensors_hang() {
        TrapDays days = quiet(61).crossings(12).losing(0.06).until("25T14:00");
        assertThat(told(Fitted.BOTH, days)).containsExactly(Kind.ROBBING);
        assertThat(watch.condition(TrapDays.TRAP.name())).isEqualTo(Condition.ROBBED);
    }

    @Test
    void the_same_traffic_that_carries_nothing_off_is_no_robbing() {
        TrapDays days = quiet(61).crossings(12).until("25T16:00");
        assertThat(told(Fitted.BOTH, days)).doesNotContain(Kind.ROBBING);
    }

    @Test
    void without_a_scale_robbers_are_told_by_heavy_traffic_that_came_at_once_and_stays_for_hours() {
        TrapDays days = quiet(62).crossings(24).until("25T12:30");
        assertThat(told(Fitted.COUNTER, days)).doesNotContain(Kind.ROBBING);
        assertThat(told(Fitted.COUNTER, days.until("25T16:00"))).containsExactly(Kind.ROBBING);
    }

    @Test
    void robbers_at_a_trap_whose_scale_has_died_are_told_by_its_counter_alone() {
        TrapDays days = quiet(62).scaleDies().crossings(24).until("25T16:00");
        assertThat(told(Fitted.BOTH, days)).contains(Kind.ROBBING);
    }

    @Test
    void without_a_scale_ants_that_are_through_in_three_hours_are_no_robbers() {
        TrapDays days = quiet(63).crossings(18).until("25T13:00").crossings(0).until("25T18:00");
        assertThat(told(Fitted.COUNTER, days)).doesNotContain(Kind.ROBBING);
    }

    @Test
    void without_a_scale_scouts_that_grow_to_a_crowd_are_no_robbers() {
        TrapDays days = growing(quiet(64));
        assertThat(told(Fitted.COUNTER, days)).doesNotContain(Kind.ROBBING).contains(Kind.SCOUTING);
    }

    @Test
    void without_a_scale_robbers_no_more_than_scouts_are_told_because_they_came_at_once_and_stay_all_day() {
        TrapDays days =
                new TrapDays(67, TWO_MINUTES).until("25T05:30").crossings(8).until("25T17:00");
        assertThat(told(Fitted.COUNTER, days)).containsExactly(Kind.ROBBING);
    }

    @Test
    void without_a_scale_ants_as_many_that_walked_through_the_night_are_no_robbers() {
        TrapDays days =
                new TrapDays(67, TWO_MINUTES).until("24T22:00").crossings(8).until("25T17:00");
        assertThat(told(Fitted.COUNTER, days)).doesNotContain(Kind.ROBBING);
    }

    @Test
    void without_a_scale_a_web_that_swings_as_often_is_no_robbers() {
        TrapDays days = new TrapDays(67, TWO_MINUTES)
                .until("25T05:30")
                .inGusts()
                .crossings(8)
                .until("25T17:00");
        assertThat(told(Fitted.COUNTER, days)).doesNotContain(Kind.ROBBING);
    }

    @Test
    void a_counter_that_is_busy_from_its_first_sample_on_is_weighed_by_what_there_is() {
        TrapDays days = new TrapDays(66, TWO_MINUTES).crossings(24).until("20T12:00");
        assertThat(told(Fitted.COUNTER, days)).doesNotContain(Kind.MOVE_IN);
    }

    @Test
    void how_busy_it_was_can_be_read_from_the_evidence() {
        assertThat(findings(Fitted.COUNTER, quiet(65).crossings(24).until("25T16:00")))
                .first()
                .satisfies(robbers -> assertThat(
                                Crossings.perMinute(robbers.evidence()).orElseThrow())
                        .isCloseTo(24, within(2.0)));
        assertThat(findings(Fitted.COUNTER, growing(quiet(64))))
                .first()
                .satisfies(scouts -> assertThat(
                                Crossings.perMinute(scouts.evidence()).orElseThrow())
                        .isGreaterThanOrEqualTo(Thresholds.defaults().scoutsPerMinute()));
    }
}
