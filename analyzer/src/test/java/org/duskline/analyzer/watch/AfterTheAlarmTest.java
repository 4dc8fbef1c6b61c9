package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;

/** What the hours and days after an alarm, and the keeper's own visits, make of it. */
class AfterTheAlarmTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);
    private static final String NAME = TrapDays.TRAP.name();
    private static final Trap WEIR = new Trap("Heron Weir", 47.01, 8.0, TrapDays.TRAP.zone());

    private LineWatch watch = new LineWatch(Thresholds.defaults(), 1);
    private final List<Finding> told = new ArrayList<>();

    private void live(Fitted fitted, List<Sample> samples) {
        watch.watch(TrapDays.TRAP, fitted, List.of());
        for (Sample sample : samples) {
            told.addAll(watch.take(NAME, "n01", fitted, List.of(sample), sample.time()));
        }
    }

    private List<Finding> moveIns(Stage stage) {
        return told.stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN && finding.stage() == stage)
                .toList();
    }

    private static Visit visit(VisitKind kind, String at) {
        return Visit.of(NAME, kind, Instant.parse("2031-05-" + at + ":00Z"), "Invented Keeper");
    }

    @Test
    void a_swarm_told_while_it_came_in_is_weighed_once_it_is_in() {
        live(Fitted.BOTH, quietThenSwarm().samples());
        assertThat(moveIns(Stage.RAISED))
                .singleElement()
                .satisfies(finding -> assertThat(size(finding).kg()).isLessThan(1.2));
        assertThat(moveIns(Stage.ARRIVED)).singleElement().satisfies(finding -> {
            assertThat(size(finding).kg()).isBetween(1.3, 1.5);
            assertThat(finding.onset()).isEqualTo(moveIns(Stage.RAISED).get(0).onset());
        });
    }

    @Test
    void a_swarm_that_only_a_counter_saw_is_reckoned_once_it_is_in() {
        live(Fitted.COUNTER, quietThenSwarm().samples());
        assertThat(moveIns(Stage.ARRIVED)).singleElement().satisfies(finding -> {
            assertThat(size(finding).lowKg()).isLessThan(1.4);
            assertThat(size(finding).highKg()).isGreaterThan(1.4);
            assertThat(size(finding).kg())
                    .isGreaterThan(size(moveIns(Stage.RAISED).get(0)).kg());
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
        live(
                Fitted.SCALE,
                new TrapDays(31, TWO_MINUTES)
                        .boxAbove(0.5)
                        .until("22T12:30")
                        .swarm(1.4, Duration.ofMinutes(18))
                        .boxAbove(9)
                        .until("23T12:00")
                        .samples());
        assertThat(moveIns(Stage.STRENGTHENED)).hasSize(1);
        assertThat(moveIns(Stage.WITHDRAWN)).isEmpty();
        assertThat(watch.condition(NAME)).isEqualTo(Condition.OCCUPIED);
    }

    @Test
    void kilos_that_leave_the_box_as_cold_as_ever_are_taken_back_with_the_reason() {
        watch = new LineWatch(Thresholds.defaults(), 1, Set.of(Beyond.DAYS_AFTER));
        live(
                Fitted.SCALE,
                new TrapDays(32, TWO_MINUTES)
                        .boxAbove(0.5)
                        .until("22T12:30")
                        .swarm(0.6, Duration.ofMinutes(18))
                        .until("23T12:00")
                        .samples());
        assertThat(moveIns(Stage.RAISED)).hasSize(1);
        assertThat(moveIns(Stage.WITHDRAWN))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("as cold as on its empty nights"));
    }

    @Test
    void without_the_evidence_of_warmth_the_same_night_says_nothing() {
        watch = new LineWatch(Thresholds.defaults(), 1, Set.of(Beyond.DAYS_AFTER, Beyond.WARMTH));
        live(
                Fitted.SCALE,
                new TrapDays(32, TWO_MINUTES)
                        .boxAbove(0.5)
                        .until("22T12:30")
                        .swarm(0.6, Duration.ofMinutes(18))
                        .until("23T12:00")
                        .samples());
        assertThat(moveIns(Stage.WITHDRAWN)).isEmpty();
    }

    @Test
    void a_scale_that_jumps_under_a_flying_colony_takes_no_colony_away_and_its_foragers_are_no_robbers() {
        live(Fitted.BOTH, settled(12).jump(-1.6).until("28T20:00").samples());
        assertThat(moveIns(Stage.ENDED)).isEmpty();
        assertThat(told).noneMatch(finding -> finding.kind() == Kind.ROBBING);
        assertThat(watch.condition(NAME)).isEqualTo(Condition.OCCUPIED);
    }

    @Test
    void weight_that_goes_while_nobody_flies_any_more_ends_it() {
        live(Fitted.BOTH, settled(0).jump(-1.6).until("28T20:00").samples());
        assertThat(moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("empty again"));
    }

    @Test
    void a_colony_that_storms_keep_in_for_two_days_is_not_given_up_while_the_scale_has_its_weight() {
        live(Fitted.BOTH, settled(0).until("26T20:00").samples());
        assertThat(moveIns(Stage.ENDED)).isEmpty();
        assertThat(watch.condition(NAME)).isEqualTo(Condition.OCCUPIED);
    }

    @Test
    void a_box_that_came_back_as_heavy_from_the_keepers_hands_is_empty_when_nobody_flies_from_it() {
        TrapDays days = settled(12).until("25T20:30").crossings(0).hands(Duration.ofMinutes(20));
        live(Fitted.BOTH, days.until("27T20:00").samples());
        assertThat(moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("empty again"));
    }

    @Test
    void a_swarm_that_is_fetched_from_a_box_that_comes_back_heavier_is_known_to_be_collected() {
        TrapDays days = settled(12).until("25T20:30").crossings(0).hands(Duration.ofMinutes(20));
        live(Fitted.BOTH, days.jump(-0.88).until("26T01:00").samples());
        assertThat(moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("collected"));
    }

    @Test
    void a_look_at_a_colony_takes_it_from_nobody() {
        TrapDays days = settled(12).until("25T20:30").crossings(0).hands(Duration.ofMinutes(20));
        live(Fitted.BOTH, days.jump(-0.25).until("26T01:00").samples());
        assertThat(moveIns(Stage.ENDED)).isEmpty();
    }

    @Test
    void foragers_who_hurry_home_before_a_storm_are_no_swarm_where_a_colony_has_flown_for_days() {
        live(
                Fitted.BOTH,
                flownFrom(70)
                        .swarm(0.35, Duration.ofMinutes(24))
                        .until("25T18:00")
                        .samples());
        assertThat(moveIns(Stage.RAISED)).isEmpty();
    }

    @Test
    void the_same_rush_into_a_trap_that_was_only_looked_at_is_a_swarm() {
        live(
                Fitted.BOTH,
                flownFrom(3)
                        .swarm(0.35, Duration.ofMinutes(24))
                        .until("25T18:00")
                        .samples());
        assertThat(moveIns(Stage.RAISED)).hasSize(1);
    }

    @Test
    void a_rush_into_a_trap_whose_colony_was_fetched_since_is_a_swarm() {
        TrapDays days = flownFrom(70).crossings(0).until("26T13:00").swarm(1.4, Duration.ofMinutes(18));
        live(Fitted.COUNTER, days.until("26T18:00").samples());
        assertThat(moveIns(Stage.RAISED)).hasSize(1);
    }

    /** A trap from which bees have flown by day since nobody knows when, so often a minute. */
    private static TrapDays flownFrom(double perMinute) {
        TrapDays days = new TrapDays(37, TWO_MINUTES);
        for (int day = 20; day <= 25; day++) {
            days.crossings(0).until(day + "T08:00").crossings(perMinute).until(day + (day < 25 ? "T19:00" : "T13:00"));
        }
        return days;
    }

    /** A swarm that has foraged for three days, and what flies from then on. */
    private static TrapDays settled(double perMinuteAfter) {
        TrapDays days = new TrapDays(36, TWO_MINUTES).until("22T12:30").swarm(1.4, Duration.ofMinutes(18));
        for (int day = 22; day <= 24; day++) {
            days.until(day + "T20:00").crossings(0).until(day + 1 + "T08:00").crossings(12);
        }
        return days.until("25T11:00").crossings(perMinuteAfter);
    }

    @Test
    void a_collection_that_is_written_down_ends_it_and_the_trap_starts_afresh() {
        TrapDays days = new TrapDays(33, TWO_MINUTES).until("22T12:30").swarm(1.4, Duration.ofMinutes(18));
        days.until("22T20:30").jump(-1.4).until("24T12:30");
        Instant second = days.now();
        days.swarm(1.1, Duration.ofMinutes(16)).until("24T16:00");
        watch.watch(TrapDays.TRAP, Fitted.BOTH, List.of());
        for (Sample sample : days.samples()) {
            told.addAll(watch.take(NAME, "n01", Fitted.BOTH, List.of(sample), sample.time()));
            if (sample.time().equals(Instant.parse("2031-05-22T20:40:00Z"))) {
                told.addAll(watch.visited(NAME, List.of(visit(VisitKind.COLLECTED, "22T20:30")), sample.time()));
            }
        }
        assertThat(moveIns(Stage.RAISED)).hasSize(2);
        assertThat(moveIns(Stage.RAISED).get(1).onset()).isBetween(second.minusSeconds(900), second.plusSeconds(900));
        assertThat(moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("taken away"));
    }

    @Test
    void a_visit_written_down_later_takes_the_alarm_back_that_the_keepers_own_hands_had_raised() {
        live(
                Fitted.SCALE,
                new TrapDays(34, TWO_MINUTES)
                        .until("22T12:30")
                        .swarm(0.5, Duration.ofMinutes(14))
                        .until("22T14:00")
                        .samples());
        assertThat(moveIns(Stage.RAISED)).hasSize(1);

        told.addAll(watch.visited(
                NAME, List.of(visit(VisitKind.BAITED, "22T12:35")), Instant.parse("2031-05-22T14:10:00Z")));

        assertThat(moveIns(Stage.WITHDRAWN)).hasSize(1);
    }

    @Test
    void a_visit_does_not_hide_a_swarm_that_the_counter_saw() {
        List<Sample> samples = new TrapDays(35, TWO_MINUTES)
                .until("22T12:30")
                .swarm(1.4, Duration.ofMinutes(18))
                .until("22T14:00")
                .samples();
        watch.watch(TrapDays.TRAP, Fitted.BOTH, List.of());
        watch.visited(NAME, List.of(visit(VisitKind.LOOKED, "22T12:20")), TrapDays.START);
        for (Sample sample : samples) {
            told.addAll(watch.take(NAME, "n01", Fitted.BOTH, List.of(sample), sample.time()));
        }
        assertThat(moveIns(Stage.RAISED)).hasSize(1);
    }

    @Test
    void a_trap_that_is_shut_is_not_taken_for_empty_because_nobody_flies() {
        List<Sample> samples = new TrapDays(36, TWO_MINUTES)
                .until("22T12:30")
                .swarm(1.4, Duration.ofMinutes(18))
                .until("24T17:00")
                .samples();
        watch.watch(TrapDays.TRAP, Fitted.COUNTER, List.of());
        watch.visited(NAME, List.of(visit(VisitKind.CLOSED, "22T20:40")), TrapDays.START);
        for (Sample sample : samples) {
            told.addAll(watch.take(NAME, "n01", Fitted.COUNTER, List.of(sample), sample.time()));
        }
        assertThat(moveIns(Stage.RAISED)).hasSize(1);
        assertThat(moveIns(Stage.ENDED)).isEmpty();
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
        watch.watch(TrapDays.TRAP, Fitted.BOTH, List.of());
        watch.watch(WEIR, Fitted.COUNTER, List.of());
        for (int i = 0; i < taken.size(); i++) {
            Sample other = scouted.get(Math.min(i, scouted.size() - 1));
            watch.take(WEIR.name(), "n02", Fitted.COUNTER, List.of(other), other.time());
            told.addAll(watch.take(
                    NAME,
                    "n01",
                    Fitted.BOTH,
                    List.of(taken.get(i)),
                    taken.get(i).time()));
        }
        TrapSurroundings surroundings = new TrapSurroundings(TrapDays.TRAP, watch.traps(), Set.of());
        long onset = moveIns(Stage.RAISED).get(0).onset().toEpochMilli();
        assertThat(surroundings.scoutsSilenced(onset, onset + 2 * 3_600_000L)).isEqualTo(1);
    }
}
