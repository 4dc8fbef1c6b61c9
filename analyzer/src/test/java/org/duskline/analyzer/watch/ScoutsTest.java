package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Scouts, and what passes for them. That scouts wait for the sun, come one by one and evenly, that ants walk at night and
 * that a web swings in gusts is common practice.
 */
class ScoutsTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);

    private static List<Finding> scouts(WatchedTrap trap) {
        return trap.raised(Kind.SCOUTING);
    }

    /** Traffic that grows from a few to three a minute within an hour and a half, and stays. */
    private static TrapDays growing(TrapDays days, String day, int hour) {
        return days.crossings(0.3)
                .until(at(day, hour, 30))
                .crossings(0.8)
                .until(at(day, hour + 1, 0))
                .crossings(1.4)
                .until(at(day, hour + 1, 30))
                .crossings(3)
                .until(at(day, hour + 5, 0));
    }

    private static String at(String day, int hour, int minute) {
        return String.format(Locale.ROOT, "%sT%02d:%02d", day, hour, minute);
    }

    @Test
    void scouts_who_grow_in_number_are_told_within_two_hours() {
        TrapDays days = growing(new TrapDays(4, TWO_MINUTES).until("22T10:00"), "22", 10);
        assertThat(scouts(new WatchedTrap(Fitted.COUNTER).hears(days)))
                .singleElement()
                .satisfies(told -> assertThat(told.raised()).isBefore(Instant.parse("2031-05-22T12:00:00Z")));
    }

    @Test
    void scouts_who_come_on_the_morning_after_robbers_and_stay_are_told_before_noon() {
        TrapDays robbed = new TrapDays(4, TWO_MINUTES)
                .until("25T10:00")
                .crossings(12)
                .losing(0.06)
                .until("25T14:00")
                .crossings(0)
                .losing(0)
                .until("26T07:30");
        assertThat(scouts(new WatchedTrap(Fitted.BOTH).hears(growing(robbed, "26", 7))))
                .singleElement()
                .satisfies(told -> assertThat(told.raised())
                        .isBetween(Instant.parse("2031-05-26T09:30:00Z"), Instant.parse("2031-05-26T11:30:00Z")));
    }

    @Test
    void scouts_are_told_hours_ahead_and_not_again_while_they_last() {
        TrapDays days = new TrapDays(4, TWO_MINUTES)
                .until("22T09:30")
                .crossings(0.3)
                .until("22T10:00")
                .crossings(0.8)
                .until("22T10:30")
                .crossings(1.4)
                .until("22T11:00")
                .crossings(3)
                .until("22T15:00");
        assertThat(scouts(new WatchedTrap(Fitted.BOTH).hears(days)))
                .singleElement()
                .satisfies(told -> assertThat(told.raised()).isBefore(Instant.parse("2031-05-22T12:30:00Z")));
    }

    @Test
    void glare_that_starts_at_once_is_none() {
        TrapDays days = new TrapDays(5, TWO_MINUTES)
                .until("22T11:00")
                .crossings(18)
                .until("22T11:50")
                .crossings(0)
                .until("22T18:00");
        assertThat(scouts(new WatchedTrap(Fitted.BOTH).hears(days))).isEmpty();
    }

    @Test
    void a_web_that_fills_the_gate_at_once_is_none_because_strays_came_by_before() {
        TrapDays days = new TrapDays(7, TWO_MINUTES)
                .until("22T08:00")
                .crossings(0.35)
                .until("22T13:00")
                .crossings(5)
                .until("22T16:00");
        assertThat(scouts(new WatchedTrap(Fitted.BOTH).hears(days))).isEmpty();
    }

    @Test
    void a_web_that_grows_as_they_do_but_swings_in_gusts_is_none() {
        TrapDays days = growing(new TrapDays(4, TWO_MINUTES).until("22T10:00").inGusts(), "22", 10);
        assertThat(scouts(new WatchedTrap(Fitted.COUNTER).hears(days))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(longs = {5, 6, 7, 8, 9, 10, 11, 12})
    void a_low_sun_that_comes_amid_the_strays_of_a_day_is_none(long seed) {
        TrapDays days = new TrapDays(seed, TWO_MINUTES)
                .until("22T10:30")
                .crossings(0.6)
                .until("22T13:00")
                .crossings(18)
                .until("22T13:50")
                .crossings(0.4)
                .until("22T17:00");
        assertThat(scouts(new WatchedTrap(Fitted.COUNTER).hears(days)))
                .noneMatch(told -> told.raised().isAfter(Instant.parse("2031-05-22T13:00:00Z")));
    }

    @Test
    void ants_that_grow_as_they_do_but_were_there_before_the_sun_are_none() {
        TrapDays days = new TrapDays(4, TWO_MINUTES)
                .until("22T02:00")
                .crossings(0.9)
                .until("22T08:00")
                .crossings(1.4)
                .until("22T08:30")
                .crossings(3)
                .until("22T13:00");
        assertThat(scouts(new WatchedTrap(Fitted.COUNTER).hears(days))).isEmpty();
    }

    @Test
    void scouts_at_a_trap_that_was_emptied_are_not_measured_by_the_colony_that_flew_there_before() {
        TrapDays days = new TrapDays(4, TWO_MINUTES)
                .until("21T11:00")
                .swarm(1.4, Duration.ofMinutes(18))
                .crossings(40)
                .until("23T19:00");
        WatchedTrap trap = new WatchedTrap(Fitted.COUNTER).hears(days);
        trap.visited(VisitKind.COLLECTED, "23T19:00", days.now());
        int heard = days.samples().size();
        growing(days.crossings(0).until("25T10:00"), "25", 10)
                .samples()
                .subList(heard, days.samples().size())
                .forEach(trap::hears);
        assertThat(scouts(trap))
                .filteredOn(told -> told.raised().isAfter(Instant.parse("2031-05-25T10:00:00Z")))
                .hasSize(1);
    }
}
