package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.trap.Fitted;
import org.junit.jupiter.api.Test;

/** What a scale without a counter can and cannot be taken in by. That a bare hook weighs kilograms less is common practice. */
class LoneScaleTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);
    private static final Duration TEN_MINUTES = Duration.ofMinutes(10);

    private static List<Finding> moveIns(TrapDays days) {
        return new WatchedTrap(Fitted.SCALE).hears(days).moveIns(Stage.RAISED);
    }

    private static TrapDays firstSwarm(long seed) {
        return new TrapDays(seed, TWO_MINUTES)
                .until("21T11:00")
                .swarm(1.3, Duration.ofMinutes(16))
                .until("22T19:30");
    }

    @Test
    void a_second_swarm_is_told_though_the_first_was_changed_for_a_box_as_heavy_and_nobody_said_so() {
        TrapDays days = firstSwarm(71)
                .until("25T12:00")
                .swarm(1.1, Duration.ofMinutes(14))
                .until("25T20:00");
        WatchedTrap trap = new WatchedTrap(Fitted.SCALE).hears(days);
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(2);
        assertThat(trap.moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(first -> assertThat(first.summary()).contains("the first was taken away"));
    }

    @Test
    void an_empty_box_that_is_hung_on_the_bare_hook_again_is_no_swarm() {
        TrapDays fetched =
                firstSwarm(72).hands(Duration.ofMinutes(10)).jump(-1.3 - 4.0).until("24T12:00");
        assertThat(moveIns(fetched.swarm(4.0, Duration.ofMinutes(8)).until("24T20:00")))
                .hasSize(1);
    }

    @Test
    void a_swarm_that_comes_after_the_scale_was_set_to_zero_is_told_all_the_same() {
        TrapDays zeroed =
                firstSwarm(73).hands(Duration.ofMinutes(10)).jump(-1.3 - 6.2).until("24T12:00");
        assertThat(moveIns(zeroed.swarm(1.3, Duration.ofMinutes(16)).until("24T20:00")))
                .hasSize(2);
    }

    @Test
    void a_swarm_that_came_between_two_samples_is_told_by_its_stragglers() {
        TrapDays days = new TrapDays(74, TEN_MINUTES)
                .until("22T12:00")
                .swarm(1.4, TEN_MINUTES)
                .swarm(0.08, TEN_MINUTES);
        assertThat(amongDryNeighbours(days).moveIns(Stage.RAISED))
                .singleElement()
                .satisfies(told -> assertThat(told.raised()).isBefore("2031-05-22T13:00:00Z"));
    }

    @Test
    void a_jump_as_large_that_has_none_and_is_followed_by_no_foragers_is_not_told() {
        TrapDays days = new TrapDays(74, TEN_MINUTES).until("22T12:00").jump(1.5);
        assertThat(amongDryNeighbours(days).moveIns(Stage.RAISED)).isEmpty();
    }

    @Test
    void a_swarm_in_a_drizzle_that_adds_nothing_to_the_other_scales_is_told() {
        assertThat(withNeighbours(quiet(75).swarm(1.4, Duration.ofMinutes(16)), 0.06, Duration.ZERO))
                .hasSize(1);
    }

    @Test
    void a_shower_that_adds_a_third_as_much_to_the_other_scales_is_not() {
        assertThat(withNeighbours(quiet(75).rain(1.4, Duration.ofMinutes(30)), 0.5, Duration.ZERO))
                .isEmpty();
    }

    @Test
    void a_shower_is_not_told_while_the_other_scales_have_not_been_heard_of_since_it_began() {
        TrapDays shower = quiet(75).rain(0.42, Duration.ofMinutes(30));
        assertThat(withNeighbours(shower, 0.3, Duration.ofMinutes(40))).isEmpty();
    }

    private static TrapDays quiet(long seed) {
        return new TrapDays(seed, TWO_MINUTES).until("22T12:30");
    }

    /** What is told of a trap among four others whose boxes take up so much water within the hour, heard of so late. */
    private static List<Finding> withNeighbours(TrapDays days, double soakedKg, Duration late) {
        List<TrapDays> others = IntStream.rangeClosed(1, 4)
                .mapToObj(i ->
                        quiet(80 + i).rain(soakedKg, Duration.ofMinutes(60)).until("22T18:00"))
                .toList();
        return WatchedScales.hang(days.until("22T18:00"), others, late).hear().moveIns(Stage.RAISED);
    }

    private static WatchedScales amongDryNeighbours(TrapDays days) {
        List<TrapDays> others = IntStream.rangeClosed(1, 4)
                .mapToObj(i -> new TrapDays(90 + i, TEN_MINUTES).until("25T06:00"))
                .toList();
        return WatchedScales.hang(days.until("25T06:00"), others, Duration.ZERO).hear();
    }
}
