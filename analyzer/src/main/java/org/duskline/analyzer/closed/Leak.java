package org.duskline.analyzer.closed;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.duskline.collector.wire.Sample;

/** Bees that still pass a closed trap. */
public final class Leak {
    private Leak() {}

    private record Step(Instant from, Sample to, double crossings) {}

    /**
     * Looks for a leak.
     *
     * @param samples of the trap in time order, from before the closing on
     * @param closed when it was closed
     */
    public static Optional<Notice> find(List<Sample> samples, Instant closed, ClosedLimits limits) {
        Instant from = closed.plus(limits.settle());
        Deque<Step> within = new ArrayDeque<>();
        double sum = 0;
        for (int i = 1; i < samples.size(); i++) {
            Sample before = samples.get(i - 1);
            Sample after = samples.get(i);
            double crossings = (after.in() - before.in()) + (after.out() - before.out());
            if (before.time().isBefore(from) || !(crossings >= 0)) {
                continue;
            }
            within.addLast(new Step(before.time(), after, crossings));
            sum += crossings;
            while (Duration.between(within.getFirst().from(), after.time()).compareTo(limits.leakWithin()) > 0
                    && within.size() > 1) {
                sum -= within.removeFirst().crossings();
            }
            if (sum >= limits.leakCrossings()) {
                return Optional.of(notice(within, sum, after));
            }
        }
        return Optional.empty();
    }

    private static Notice notice(Deque<Step> within, double sum, Sample settled) {
        Instant onset = within.stream()
                .filter(step -> step.crossings() > 0)
                .findFirst()
                .orElseThrow()
                .from();
        long minutes = Math.max(1, Duration.between(onset, settled.time()).toMinutes());
        return new Notice(
                Notice.What.LEAKING,
                onset,
                settled.received(),
                Math.round(sum) + " bees passed the closed entrance in " + minutes
                        + " min. Look for the gap after dark and tape it.");
    }
}
