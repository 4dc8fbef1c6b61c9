package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.trap.Fitted;
import org.junit.jupiter.api.Test;

/** What a watch makes of a colony that has lived in a trap for days: of storms, hands, jumps of the scale, rushes at its door. */
class SettledColonyTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);

    @Test
    void a_scale_that_jumps_under_a_flying_colony_takes_no_colony_away_and_its_foragers_are_no_robbers() {
        WatchedTrap trap =
                new WatchedTrap(Fitted.BOTH).hears(settled(12).jump(-1.6).until("28T20:00"));
        assertThat(trap.moveIns(Stage.ENDED)).isEmpty();
        assertThat(trap.told()).noneMatch(finding -> finding.kind() == Kind.ROBBING);
        assertThat(trap.condition()).isEqualTo(Condition.OCCUPIED);
    }

    @Test
    void weight_that_goes_while_nobody_flies_any_more_ends_it() {
        WatchedTrap trap =
                new WatchedTrap(Fitted.BOTH).hears(settled(0).jump(-1.6).until("28T20:00"));
        assertThat(trap.moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("empty again"));
    }

    @Test
    void a_colony_that_storms_keep_in_for_two_days_is_not_given_up_while_the_scale_has_its_weight() {
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH).hears(settled(0).until("26T20:00"));
        assertThat(trap.moveIns(Stage.ENDED)).isEmpty();
        assertThat(trap.condition()).isEqualTo(Condition.OCCUPIED);
    }

    @Test
    void a_box_that_came_back_as_heavy_from_the_keepers_hands_is_empty_when_nobody_flies_from_it() {
        TrapDays days = settled(12).until("25T20:30").crossings(0).hands(Duration.ofMinutes(20));
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH).hears(days.until("27T20:00"));
        assertThat(trap.moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("empty again"));
    }

    @Test
    void a_swarm_that_is_fetched_from_a_box_that_comes_back_heavier_is_known_to_be_collected() {
        TrapDays days = settled(12).until("25T20:30").crossings(0).hands(Duration.ofMinutes(20));
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH).hears(days.jump(-0.88).until("26T01:00"));
        assertThat(trap.moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.summary()).contains("collected"));
    }

    @Test
    void
            at_a_counter_alone_a_second_swarm_is_told_though_the_first_was_fetched_by_night_and_scouts_flew_in_its_place() {
        TrapDays days = new TrapDays(91, TWO_MINUTES)
                .until("21T11:00")
                .swarm(1.3, Duration.ofMinutes(16))
                .crossings(14)
                .until("22T18:30")
                .crossings(0)
                .until("23T07:00")
                .crossings(4)
                .until("23T18:00")
                .crossings(0)
                .until("24T07:00")
                .crossings(5)
                .until("24T11:00")
                .swarm(1.1, Duration.ofMinutes(14))
                .until("24T15:00");
        WatchedTrap trap = new WatchedTrap(Fitted.COUNTER).hears(days);
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(2);
        assertThat(trap.moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(first -> assertThat(first.summary()).contains("the first was taken away"));
    }

    @Test
    void a_look_at_a_colony_takes_it_from_nobody() {
        TrapDays days = settled(12).until("25T20:30").crossings(0).hands(Duration.ofMinutes(20));
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH).hears(days.jump(-0.25).until("26T01:00"));
        assertThat(trap.moveIns(Stage.ENDED)).isEmpty();
    }

    @Test
    void foragers_who_hurry_home_before_a_storm_are_no_swarm_where_a_colony_has_flown_for_days() {
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH)
                .hears(flownFrom(70).swarm(0.35, Duration.ofMinutes(24)).until("25T18:00"));
        assertThat(trap.moveIns(Stage.RAISED)).isEmpty();
    }

    @Test
    void the_same_rush_into_a_trap_that_was_only_looked_at_is_a_swarm() {
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH)
                .hears(flownFrom(3).swarm(0.35, Duration.ofMinutes(24)).until("25T18:00"));
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(1);
    }

    @Test
    void a_rush_into_a_trap_whose_colony_was_fetched_since_is_a_swarm() {
        TrapDays days = flownFrom(70).crossings(0).until("26T13:00").swarm(1.4, Duration.ofMinutes(18));
        WatchedTrap trap = new WatchedTrap(Fitted.COUNTER).hears(days.until("26T18:00"));
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(1);
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
}
