package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a keeper is told of one trap while all goes as usual: of a swarm from its coming to its leaving, and of silence. */
class LineWatchTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);

    private static TrapDays quiet(long seed) {
        return new TrapDays(seed, TWO_MINUTES).until("22T12:30");
    }

    @ParameterizedTest
    @EnumSource(Fitted.class)
    void a_swarm_at_noon_is_told_once_while_it_enters(Fitted fitted) {
        TrapDays days = quiet(1);
        Instant start = days.now();
        days.swarm(1.4, Duration.ofMinutes(18)).until("23T09:00");

        List<Finding> told = new WatchedTrap(fitted).hears(days).moveIns(Stage.RAISED);

        assertThat(told).hasSize(1);
        assertThat(told.get(0).onset()).isBetween(start.minusSeconds(900), start.plusSeconds(900));
        assertThat(told.get(0).raised()).isBetween(start, start.plusSeconds(30 * 60));
        assertThat(told.get(0).evidence()).isNotEmpty();
        assertThat(told.get(0).rivals().values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum())
                .isBetween(0.99, 1.01);
    }

    @Test
    void a_swarm_that_stayed_past_dusk_is_borne_out_and_its_weight_is_known() {
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH)
                .hears(quiet(2).swarm(1.4, Duration.ofMinutes(18)).until("22T23:00"));

        Finding strengthened = trap.told().stream()
                .filter(finding -> finding.stage() == Stage.STRENGTHENED)
                .findFirst()
                .orElseThrow();
        assertThat(strengthened.size().orElseThrow().kg()).isBetween(1.2, 1.6);
        assertThat(trap.condition()).isEqualTo(Condition.OCCUPIED);
    }

    @ParameterizedTest
    @EnumSource(Fitted.class)
    void a_colony_that_leaves_is_a_departure_and_the_trap_is_free_again(Fitted fitted) {
        TrapDays days = quiet(9).swarm(1.4, Duration.ofMinutes(18))
                .crossings(20)
                .until("24T11:00")
                .leave(1.4, Duration.ofMinutes(12))
                .crossings(0)
                .until("24T19:00");
        WatchedTrap trap = new WatchedTrap(fitted).hears(days);
        assertThat(trap.raised(Kind.DEPARTURE)).hasSize(1);
        assertThat(trap.moveIns(Stage.RAISED)).hasSize(1);
    }

    @Test
    void silence_is_told_once_and_ends_when_the_node_is_heard_again() {
        TrapDays days = quiet(10);
        WatchedTrap trap = new WatchedTrap(Fitted.BOTH).hears(days);
        trap.waits(days.now().plus(Duration.ofHours(7)));
        trap.waits(days.now().plus(Duration.ofHours(9)));
        assertThat(trap.raised(Kind.UNHEARD))
                .singleElement()
                .satisfies(silence -> assertThat(silence.summary()).isEqualTo("Nothing heard for 7 h"));
        assertThat(trap.condition()).isEqualTo(Condition.UNHEARD);
    }

    @Test
    void what_was_told_before_a_restart_is_not_told_again() {
        TrapDays days = quiet(15).swarm(1.4, Duration.ofMinutes(18)).until("22T16:00");
        List<Finding> known = new WatchedTrap(Fitted.BOTH).hears(days).moveIns(Stage.RAISED);

        LineWatch restarted = new LineWatch(Thresholds.defaults(), 1);
        restarted.watch(TrapDays.TRAP, Fitted.BOTH, known);
        List<Finding> again = new ArrayList<>();
        for (Sample sample : days.samples()) {
            again.addAll(restarted.take(TrapDays.TRAP.name(), "n01", Fitted.BOTH, List.of(sample), sample.time()));
        }
        assertThat(again).noneMatch(finding -> finding.kind() == Kind.MOVE_IN && finding.stage() == Stage.RAISED);
    }
}
