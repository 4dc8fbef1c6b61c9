package org.duskline.analyzer.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/** The invented trap of {@link TrapDays} with a scale alone, among others with the like. */
final class WatchedScales {
    private record Received(String trap, Fitted fitted, Sample sample, Instant at) {}

    private final LineWatch watch = new LineWatch(Thresholds.defaults(), 1);
    private final List<Received> stream = new ArrayList<>();
    private final List<Finding> told = new ArrayList<>();

    private WatchedScales() {}

    /**
     * The days at the trap, each sample to be heard at once, and those at the others, to be heard so much later.
     *
     * @param others days at the other traps
     */
    static WatchedScales hang(TrapDays days, List<TrapDays> others, Duration late) {
        return hang(Fitted.SCALE, days, others, late);
    }

    /** The same with something else than a scale alone at the trap. */
    static WatchedScales hang(Fitted fitted, TrapDays days, List<TrapDays> others, Duration late) {
        WatchedScales scales = new WatchedScales();
        scales.hang(TrapDays.TRAP, fitted, days, Duration.ZERO);
        IntStream.range(0, others.size())
                .forEach(i -> scales.hang(
                        new Trap("Neighbour " + i, 47.0 + i * 0.02, 8.0, ZoneId.of("UTC")),
                        Fitted.SCALE,
                        others.get(i),
                        late));
        scales.stream.sort(Comparator.comparing(Received::at));
        return scales;
    }

    WatchedScales hear() {
        stream.forEach(each ->
                told.addAll(watch.take(each.trap(), each.trap(), each.fitted(), List.of(each.sample()), each.at())));
        return this;
    }

    private void hang(Trap trap, Fitted fitted, TrapDays days, Duration late) {
        watch.watch(trap, fitted, List.of());
        days.samples()
                .forEach(sample -> stream.add(
                        new Received(trap.name(), fitted, sample, sample.time().plus(late))));
    }

    /**
     * Somebody was at the trap and writes it down now.
     *
     * @param at day of the invented May and time, such as "22T20:30"
     */
    WatchedScales visited(VisitKind kind, String at) {
        Visit visit = Visit.of(TrapDays.TRAP.name(), kind, Instant.parse("2031-05-" + at + ":00Z"), "Invented Keeper");
        told.addAll(watch.visited(
                TrapDays.TRAP.name(),
                List.of(visit),
                stream.get(stream.size() - 1).at()));
        return this;
    }

    /** Move-ins told at any of the traps, as they came to such a stage. */
    List<Finding> moveIns(Stage stage) {
        return told(Kind.MOVE_IN, stage);
    }

    /** What was told at any of the traps, as it came to such a stage. */
    List<Finding> told(Kind kind, Stage stage) {
        return told.stream()
                .filter(finding -> finding.kind() == kind && finding.stage() == stage)
                .toList();
    }

    /** How near a stretch of days, such as "24T00:00", came to a kind of finding at the trap. */
    Nearest nearest(Kind kind, String from, String until) {
        return watch
                .nearest(
                        TrapDays.TRAP.name(),
                        Instant.parse("2031-05-" + from + ":00Z"),
                        Instant.parse("2031-05-" + until + ":00Z"))
                .stream()
                .filter(nearest -> nearest.kind() == kind)
                .findFirst()
                .orElseThrow();
    }
}
