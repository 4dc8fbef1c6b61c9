package org.duskline.analyzer.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/** The invented trap of {@link TrapDays} with a scale alone, among others with the like. */
final class WatchedScales {
    private record Received(String trap, Sample sample, Instant at) {}

    private final LineWatch watch = new LineWatch(Thresholds.defaults(), 1);
    private final List<Received> stream = new ArrayList<>();
    private final List<Finding> told = new ArrayList<>();

    private WatchedScales() {}

    /**
     * The days at the trap, each sample heard at once, and those at the others, heard so much later.
     *
     * @param others days at the other traps
     */
    static WatchedScales hear(TrapDays days, List<TrapDays> others, Duration late) {
        WatchedScales scales = new WatchedScales();
        scales.hang(TrapDays.TRAP, days, Duration.ZERO);
        IntStream.range(0, others.size())
                .forEach(i -> scales.hang(
                        new Trap("Neighbour " + i, 47.0 + i * 0.02, 8.0, ZoneId.of("UTC")), others.get(i), late));
        scales.stream.sort(Comparator.comparing(Received::at));
        scales.stream.forEach(each -> scales.told.addAll(
                scales.watch.take(each.trap(), each.trap(), Fitted.SCALE, List.of(each.sample()), each.at())));
        return scales;
    }

    private void hang(Trap trap, TrapDays days, Duration late) {
        watch.watch(trap, Fitted.SCALE, List.of());
        days.samples()
                .forEach(sample -> stream.add(
                        new Received(trap.name(), sample, sample.time().plus(late))));
    }

    /** Move-ins told at any of the traps that came to such a stage. */
    List<Finding> moveIns(Stage stage) {
        return ofMoveIns().filter(finding -> finding.stage() == stage).toList();
    }

    private Stream<Finding> ofMoveIns() {
        return told.stream().filter(finding -> finding.kind() == Kind.MOVE_IN);
    }
}
