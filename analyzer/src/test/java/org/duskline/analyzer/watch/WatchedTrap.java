package org.duskline.analyzer.watch;

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
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.wire.Sample;

/** The invented trap of {@link TrapDays} under a live watch, and all that was told of it. */
final class WatchedTrap {
    private static final String NAME = TrapDays.TRAP.name();

    private final LineWatch watch;
    private final Fitted fitted;
    private final List<Finding> told = new ArrayList<>();

    WatchedTrap(Fitted fitted, Beyond... without) {
        this.watch = new LineWatch(Thresholds.defaults(), 1, Set.of(without));
        this.fitted = fitted;
        watch.watch(TrapDays.TRAP, fitted, List.of());
    }

    /** Each sample arrives alone, at the moment it was measured. */
    WatchedTrap hears(TrapDays days) {
        days.samples().forEach(this::hears);
        return this;
    }

    void hears(Sample sample) {
        hears(List.of(sample), sample.time());
    }

    /** Samples arrive together, some time after they were measured. */
    void hears(List<Sample> samples, Instant received) {
        told.addAll(watch.take(NAME, "n01", fitted, samples, received));
    }

    /** Nothing arrives until then. */
    void waits(Instant until) {
        told.addAll(watch.tick(until));
    }

    /**
     * Somebody was there and has written it down.
     *
     * @param at day of the invented May and time, such as "22T20:30"
     * @param written when it was written down
     */
    void visited(VisitKind kind, String at, Instant written) {
        Visit visit = Visit.of(NAME, kind, Instant.parse("2031-05-" + at + ":00Z"), "Invented Keeper");
        told.addAll(watch.visited(NAME, List.of(visit), written));
    }

    LineWatch watch() {
        return watch;
    }

    Condition condition() {
        return watch.condition(NAME);
    }

    List<Finding> told() {
        return told;
    }

    List<Finding> moveIns(Stage stage) {
        return told(Kind.MOVE_IN, stage);
    }

    List<Finding> raised(Kind kind) {
        return told(kind, Stage.RAISED);
    }

    private List<Finding> told(Kind kind, Stage stage) {
        return told.stream()
                .filter(finding -> finding.kind() == kind && finding.stage() == stage)
                .toList();
    }
}
