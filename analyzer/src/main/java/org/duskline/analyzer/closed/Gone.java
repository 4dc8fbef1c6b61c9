package org.duskline.analyzer.closed;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.stats.Robust;
import org.duskline.collector.wire.Sample;

/** A weight that has vanished with its box: fallen, taken down, or stolen. */
public final class Gone {
    /** How much of a weighed box must vanish: more than any colony that flies off, less than the hanger keeps. */
    private static final double SHARE_OF_BOX = 0.7;

    private static final int LEVEL_SAMPLES = 12;
    private static final int FEWEST_BEFORE = 3;

    private Gone() {}

    /**
     * Looks for the loss.
     *
     * @param samples of the trap in time order
     * @param boxKg what the empty box weighs; NaN where not weighed
     * @param handled stretches in which a keeper was at the trap, beginnings and ends in turn; a loss in one is no loss
     */
    public static Optional<Notice> find(
            List<Sample> samples, double boxKg, List<Handled> handled, ClosedLimits limits) {
        double loss = Double.isNaN(boxKg) ? limits.goneKg() : SHARE_OF_BOX * boxKg;
        List<Double> before = new ArrayList<>();
        double level = Double.NaN;
        Sample first = null;
        for (Sample sample : samples) {
            double weight = sample.weightKg();
            if (Double.isNaN(weight) || handled.stream().anyMatch(each -> each.covers(sample.time()))) {
                if (!Double.isNaN(weight)) {
                    before.clear();
                    first = null;
                }
                continue;
            }
            if (first == null) {
                level = before.size() < FEWEST_BEFORE ? Double.NaN : level(before);
            }
            boolean missing = level - weight >= loss;
            if (!missing) {
                before.add(weight);
                first = null;
            } else if (first == null) {
                first = sample;
            } else if (Duration.between(first.time(), sample.time()).compareTo(limits.goneFor()) >= 0) {
                return Optional.of(notice(first, sample, level));
            }
        }
        return Optional.empty();
    }

    /** A stretch in which a keeper was at the trap. */
    public record Handled(Instant from, Instant until) {
        public boolean covers(Instant time) {
            return !time.isBefore(from) && !time.isAfter(until);
        }
    }

    private static double level(List<Double> before) {
        return Robust.median(before.subList(Math.max(0, before.size() - LEVEL_SAMPLES), before.size()).stream()
                .mapToDouble(Double::doubleValue)
                .toArray());
    }

    private static Notice notice(Sample first, Sample settled, double level) {
        return new Notice(
                Notice.What.GONE,
                first.time(),
                settled.received(),
                String.format(
                        Locale.ROOT,
                        "%.1f kg vanished and stayed away: fallen, taken down, or stolen. Nobody recorded a visit.",
                        level - settled.weightKg()));
    }
}
