package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Kind;
import org.duskline.collector.trap.Fitted;
import org.junit.jupiter.api.Test;

/** "Why was nothing told?" asked about invented days at one trap. */
class WhyNotTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);
    private static final Instant MORNING = Instant.parse("2031-05-22T10:00:00Z");
    private static final Instant EVENING = Instant.parse("2031-05-22T20:00:00Z");

    private static Nearest of(Kind kind, Fitted fitted, Thresholds thresholds, TrapDays days) {
        LineWatch watch = new LineWatch(thresholds, 1);
        watch.watch(TrapDays.TRAP, fitted, List.of());
        days.samples()
                .forEach(sample -> watch.take(TrapDays.TRAP.name(), "n01", fitted, List.of(sample), sample.time()));
        return watch.nearest(TrapDays.TRAP.name(), MORNING, EVENING).stream()
                .filter(one -> one.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private static TrapDays quiet(long seed) {
        return new TrapDays(seed, TWO_MINUTES).until("22T12:30");
    }

    private static Thresholds asking(double swarmKg, double odds) {
        Thresholds usual = Thresholds.defaults();
        return new Thresholds(
                swarmKg,
                odds,
                usual.scoutsPerMinute(),
                usual.robbersPerMinute(),
                usual.flightCelsius(),
                usual.unheardHours(),
                usual.batteryVolts());
    }

    @Test
    void on_a_quiet_day_there_was_nothing_to_weigh_and_that_is_said() {
        Nearest moveIn = of(Kind.MOVE_IN, Fitted.BOTH, Thresholds.defaults(), quiet(1).until("22T22:00"));
        assertThat(moveIn.at()).isEmpty();
        assertThat(moveIn.odds()).isNaN();
        assertThat(moveIn.heldBack()).contains("no rush");
    }

    @Test
    void a_small_swarm_that_patient_thresholds_passed_over_came_nearest_while_it_entered() {
        TrapDays days = quiet(2);
        Instant start = days.now();
        days.swarm(0.3, Duration.ofMinutes(14)).until("22T22:00");
        Nearest moveIn = of(Kind.MOVE_IN, Fitted.BOTH, asking(1, 100_000), days);
        assertThat(moveIn.at().orElseThrow()).isBetween(start, start.plus(Duration.ofHours(1)));
        assertThat(moveIn.needed()).isEqualTo(100_000);
        assertThat(moveIn.odds()).isLessThan(100_000);
        assertThat(moveIn.evidence()).anySatisfy(piece -> {
            assertThat(piece.said()).contains("smallest swarm 1.00");
            assertThat(piece.logOdds()).isNegative();
        });
        assertThat(moveIn.heldBack()).startsWith("Above all: ");
    }

    @Test
    void what_was_told_is_said_to_have_been_told() {
        TrapDays days = quiet(3).swarm(1.4, Duration.ofMinutes(18)).until("22T22:00");
        Nearest moveIn = of(Kind.MOVE_IN, Fitted.BOTH, Thresholds.defaults(), days);
        assertThat(moveIn.odds()).isGreaterThanOrEqualTo(moveIn.needed());
        assertThat(moveIn.heldBack()).isEqualTo("Nothing: it was told.");
    }

    @Test
    void no_colony_leaves_a_trap_in_which_none_lived() {
        assertThat(of(Kind.DEPARTURE, Fitted.BOTH, Thresholds.defaults(), quiet(4).until("22T22:00"))
                        .heldBack())
                .isEqualTo("No swarm lived in the trap.");
    }

    @Test
    void a_scale_alone_cannot_see_scouts_and_says_so() {
        assertThat(of(Kind.SCOUTING, Fitted.SCALE, Thresholds.defaults(), quiet(5).until("22T22:00"))
                        .heldBack())
                .contains("No counter is fitted");
    }

    @Test
    void passers_by_too_few_to_be_scouts_are_measured_by_the_threshold() {
        TrapDays days = quiet(6).crossings(0.5).until("22T22:00");
        assertThat(of(Kind.SCOUTING, Fitted.BOTH, Thresholds.defaults(), days).heldBack())
                .isEqualTo("There were never 0.8 crossings a minute for half an hour.");
    }
}
