package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What brings weight as a swarm does and is none; and two swarms at once, which are no rain. */
class NoSwarmTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);

    private static TrapDays quiet(long seed) {
        return new TrapDays(seed, TWO_MINUTES).until("22T12:30");
    }

    private static Trap another(int number) {
        return new Trap("Trap " + number, 47.0 + number * 0.02, 8.0, ZoneId.of("UTC"));
    }

    /** Move-ins told at traps whose samples arrive side by side, each at the moment it was measured. */
    private static List<Finding> moveIns(Fitted fitted, List<Trap> line, List<List<Sample>> samples) {
        LineWatch watch = new LineWatch(Thresholds.defaults(), 1);
        line.forEach(trap -> watch.watch(trap, fitted, List.of()));
        List<Finding> told = new ArrayList<>();
        for (int k = 0; k < samples.stream().mapToInt(List::size).min().orElseThrow(); k++) {
            for (int i = 0; i < line.size(); i++) {
                Sample sample = samples.get(i).get(k);
                told.addAll(watch.take(line.get(i).name(), "n01", fitted, List.of(sample), sample.time()));
            }
        }
        return told.stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN && finding.stage() == Stage.RAISED)
                .toList();
    }

    @ParameterizedTest
    @EnumSource(
            value = Fitted.class,
            names = {"BOTH", "SCALE"})
    void a_scale_that_jumps_is_a_tare_shift(Fitted fitted) {
        WatchedTrap trap = new WatchedTrap(fitted).hears(quiet(6).jump(0.8).until("22T20:00"));
        assertThat(trap.moveIns(Stage.RAISED)).isEmpty();
        assertThat(trap.raised(Kind.TARE_SHIFT)).hasSize(1);
    }

    @ParameterizedTest
    @EnumSource(
            value = Fitted.class,
            names = {"BOTH", "SCALE"})
    void hands_at_the_trap_are_a_disturbance(Fitted fitted) {
        WatchedTrap trap = new WatchedTrap(fitted)
                .hears(quiet(7).hands(Duration.ofMinutes(14)).until("22T20:00"));
        assertThat(trap.moveIns(Stage.RAISED)).isEmpty();
        assertThat(trap.raised(Kind.DISTURBED)).hasSize(1);
    }

    @Test
    void rain_that_reaches_the_neighbours_too_is_no_swarm_even_for_a_lone_scale() {
        List<Trap> line = new ArrayList<>();
        List<List<Sample>> samples = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            line.add(another(i));
            samples.add(quiet(20 + i)
                    .rain(0.3 + 0.1 * i, Duration.ofMinutes(50))
                    .until("22T18:00")
                    .samples());
        }
        line.add(TrapDays.TRAP);
        samples.add(quiet(8).rain(0.7, Duration.ofMinutes(50)).until("22T18:00").samples());
        assertThat(moveIns(Fitted.SCALE, line, samples)).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Fitted.class)
    void two_swarms_in_the_same_minute_are_both_told_and_are_not_taken_for_rain(Fitted fitted) {
        List<Trap> line = new ArrayList<>();
        List<List<Sample>> samples = new ArrayList<>();
        for (int i = 1; i <= 3; i++) {
            line.add(another(i));
            TrapDays days = quiet(30 + i);
            samples.add((i < 3 ? days.swarm(1.3, Duration.ofMinutes(16)) : days)
                    .until("22T18:00")
                    .samples());
        }
        assertThat(moveIns(fitted, line, samples))
                .extracting(Finding::trap)
                .containsExactlyInAnyOrder("Trap 1", "Trap 2");
    }
}
