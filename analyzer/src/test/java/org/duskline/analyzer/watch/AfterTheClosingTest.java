package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.evening.SampleStream;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;

/** What the watch says once a trap is shut: an invented trap, its samples told hour by hour. */
class AfterTheClosingTest {
    private static final Trap TRAP = new Trap("Alder Bend", 47.0, 8.0, ZoneId.of("UTC"));
    private static final Instant CLOSED = Instant.parse("2031-05-12T19:30:00Z");
    private static final Duration FIVE = Duration.ofMinutes(5);

    private final LineWatch watch = new LineWatch(Thresholds.defaults(), 1);
    private final List<Finding> told = new ArrayList<>();

    AfterTheClosingTest() {
        watch.watch(TRAP, Fitted.BOTH, List.of());
    }

    @Test
    void a_box_that_climbs_in_the_morning_sun_is_told_once_and_is_over_when_it_was_shaded() {
        visited(visit(VisitKind.CLOSED, CLOSED));
        hear(evening()
                .inside(33)
                .lasting(Duration.ofHours(11))
                .warmingInside(0.1)
                .lasting(Duration.ofMinutes(50))
                .inside(31)
                .lasting(Duration.ofHours(1)));
        assertThat(stages(Kind.OVERHEATING)).containsExactly(Stage.RAISED, Stage.ENDED);
        assertThat(told(Kind.OVERHEATING).get(0).summary()).contains("Shade it or open it now");
    }

    @Test
    void a_box_that_cooled_down_and_climbs_again_is_told_again() {
        visited(visit(VisitKind.CLOSED, CLOSED));
        hear(evening()
                .inside(33)
                .lasting(Duration.ofHours(11))
                .inside(39)
                .lasting(Duration.ofMinutes(30))
                .inside(30)
                .lasting(Duration.ofMinutes(45))
                .inside(39.5)
                .lasting(Duration.ofMinutes(30)));
        assertThat(stages(Kind.OVERHEATING)).containsExactly(Stage.RAISED, Stage.ENDED, Stage.RAISED);
    }

    @Test
    void an_open_trap_may_be_as_warm_as_it_likes() {
        hear(evening().inside(41).lasting(Duration.ofHours(5)));
        assertThat(told).noneMatch(finding -> finding.kind() == Kind.OVERHEATING);
    }

    @Test
    void bees_that_pass_a_closed_trap_leak_until_it_is_fetched() {
        visited(visit(VisitKind.CLOSED, CLOSED));
        SampleStream stream = leakAtDawn();
        hear(stream);
        assertThat(stages(Kind.LEAKING)).containsExactly(Stage.RAISED);
        visited(visit(VisitKind.CLOSED, CLOSED), visit(VisitKind.COLLECTED, Instant.parse("2031-05-13T05:30:00Z")));
        assertThat(stages(Kind.LEAKING)).containsExactly(Stage.RAISED, Stage.ENDED);
    }

    @Test
    void a_closing_written_down_days_later_still_tells_the_leak_of_that_morning() {
        hear(leakAtDawn());
        assertThat(told).noneMatch(finding -> finding.kind() == Kind.LEAKING);
        visited(visit(VisitKind.CLOSED, CLOSED));
        assertThat(told(Kind.LEAKING))
                .singleElement()
                .satisfies(leak -> assertThat(leak.onset()).isBetween("2031-05-13T04:20:00Z", "2031-05-13T04:40:00Z"));
    }

    @Test
    void a_closing_that_never_was_takes_its_leak_back() {
        visited(visit(VisitKind.CLOSED, CLOSED));
        hear(leakAtDawn());
        visited();
        assertThat(stages(Kind.LEAKING)).containsExactly(Stage.RAISED, Stage.WITHDRAWN);
    }

    @Test
    void a_counter_that_dips_to_nothing_and_comes_back_does_not_leak() {
        visited(visit(VisitKind.CLOSED, CLOSED));
        List<Sample> samples =
                new ArrayList<>(evening().flying(0).lasting(Duration.ofHours(3)).samples());
        samples.replaceAll(sample -> sample.time().equals(CLOSED.plus(Duration.ofHours(2))) ? zeroed(sample) : sample);
        samples.forEach(this::hear);
        assertThat(told).noneMatch(finding -> finding.kind() == Kind.LEAKING);
    }

    @Test
    void a_box_that_vanishes_at_night_is_gone_and_one_that_comes_back_is_not() {
        hear(evening()
                .weighing(9.6)
                .lasting(Duration.ofHours(5))
                .weighing(0.3)
                .lasting(Duration.ofMinutes(40))
                .weighing(9.5)
                .lasting(Duration.ofHours(1)));
        assertThat(stages(Kind.GONE)).containsExactly(Stage.RAISED, Stage.ENDED);
        assertThat(told(Kind.GONE).get(0).summary()).startsWith("9.3 kg vanished");
    }

    @Test
    void a_visit_recorded_the_next_day_takes_the_theft_back() {
        hear(evening().weighing(9.6).lasting(Duration.ofHours(5)).weighing(0.3).lasting(Duration.ofHours(3)));
        visited(visit(VisitKind.COLLECTED, CLOSED.plus(Duration.ofHours(5)).plus(FIVE)));
        assertThat(stages(Kind.GONE)).containsExactly(Stage.RAISED, Stage.WITHDRAWN);
    }

    @Test
    void a_box_fetched_under_a_recorded_visit_is_never_missed() {
        visited(visit(VisitKind.COLLECTED, CLOSED.plus(Duration.ofHours(5))));
        hear(evening().weighing(9.6).lasting(Duration.ofHours(5)).weighing(0.3).lasting(Duration.ofHours(9)));
        assertThat(told).noneMatch(finding -> finding.kind() == Kind.GONE);
    }

    @Test
    void the_condition_follows_the_visits_until_the_trap_hangs_again() {
        hear(evening().weighing(9.6).lasting(Duration.ofHours(1)));
        visited(visit(VisitKind.CLOSED, CLOSED));
        assertThat(watch.condition(TRAP.name())).isEqualTo(Condition.CLOSED);
        Visit collected = visit(VisitKind.COLLECTED, CLOSED.plusSeconds(1800));
        visited(visit(VisitKind.CLOSED, CLOSED), collected);
        assertThat(watch.condition(TRAP.name())).isEqualTo(Condition.COLLECTED);
        visited(visit(VisitKind.CLOSED, CLOSED), collected, visit(VisitKind.REHUNG, CLOSED.plusSeconds(2400)));
        assertThat(watch.condition(TRAP.name())).isEqualTo(Condition.QUIET);
    }

    @Test
    void after_a_restart_nothing_is_told_twice() {
        visited(visit(VisitKind.CLOSED, CLOSED));
        SampleStream stream = leakAtDawn();
        hear(stream);
        LineWatch restarted = new LineWatch(Thresholds.defaults(), 1);
        restarted.watch(TRAP, Fitted.BOTH, List.copyOf(told));
        restarted.visited(TRAP.name(), List.of(visit(VisitKind.CLOSED, CLOSED)), CLOSED);
        assertThat(stream.samples())
                .flatMap(sample -> restarted.take(TRAP.name(), "n01", Fitted.BOTH, List.of(sample), sample.received()))
                .noneMatch(finding -> finding.kind() == Kind.LEAKING);
    }

    private SampleStream leakAtDawn() {
        return evening().flying(0).lasting(Duration.ofHours(9)).flying(2).lasting(Duration.ofMinutes(50));
    }

    private static SampleStream evening() {
        return SampleStream.from(CLOSED.toString(), FIVE);
    }

    private static Sample zeroed(Sample sample) {
        return new Sample(
                sample.timeMillis(),
                sample.receivedMillis(),
                0,
                0,
                sample.weightKg(),
                Double.NaN,
                Double.NaN,
                sample.cellCelsius(),
                sample.boxCelsius(),
                Double.NaN,
                Double.NaN,
                -1,
                -1,
                0);
    }

    private static Visit visit(VisitKind kind, Instant at) {
        return Visit.of(TRAP.name(), kind, at, "Hedda");
    }

    private void visited(Visit... standing) {
        told.addAll(watch.visited(TRAP.name(), List.of(standing), CLOSED.plus(Duration.ofDays(1))));
    }

    private void hear(SampleStream stream) {
        stream.samples().forEach(this::hear);
    }

    private void hear(Sample sample) {
        told.addAll(watch.take(TRAP.name(), "n01", Fitted.BOTH, List.of(sample), sample.received()));
    }

    private List<Finding> told(Kind kind) {
        return told.stream().filter(finding -> finding.kind() == kind).toList();
    }

    private List<Stage> stages(Kind kind) {
        return told(kind).stream().map(Finding::stage).toList();
    }
}
