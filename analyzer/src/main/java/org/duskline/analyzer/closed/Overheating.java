package org.duskline.analyzer.closed;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.collector.wire.Sample;

/**
 * Warmth that climbs in a closed box. Judged by the thermometer in the box; without one by how long the shade outside
 * has been warm.
 */
public final class Overheating {
    private Overheating() {}

    /**
     * Looks for overheating. A single reading is no evidence; two in a row are needed.
     *
     * @param samples of the trap in time order
     * @param closed when it was closed; earlier samples do not count
     */
    public static Optional<Notice> find(List<Sample> samples, Instant closed, ClosedLimits limits) {
        Deque<Sample> recent = new ArrayDeque<>();
        Instant hotSince = null;
        Instant outsideSince = null;
        boolean boxKnown = false;
        for (Sample sample : samples) {
            if (sample.time().isBefore(closed)) {
                continue;
            }
            if (!Double.isNaN(sample.boxCelsius())) {
                boxKnown = true;
                boolean hot = sample.boxCelsius() >= limits.hotCelsius();
                if (hot && hotSince != null) {
                    return Optional.of(hot(hotSince, sample));
                }
                hotSince = hot ? sample.time() : null;
                recent.addLast(sample);
                while (Duration.between(recent.getFirst().time(), sample.time()).compareTo(limits.climbWithin()) > 0) {
                    recent.removeFirst();
                }
                Optional<Notice> climbing = climbing(recent, sample, limits);
                if (climbing.isPresent()) {
                    return climbing;
                }
            } else if (!boxKnown && !Double.isNaN(sample.cellCelsius())) {
                outsideSince = sample.cellCelsius() < limits.outsideCelsius()
                        ? null
                        : outsideSince == null ? sample.time() : outsideSince;
                if (outsideSince != null
                        && Duration.between(outsideSince, sample.time()).compareTo(limits.outsideFor()) >= 0) {
                    return Optional.of(warmOutside(outsideSince, sample));
                }
            }
        }
        return Optional.empty();
    }

    /**
     * When it was over: cool for long enough, without one warm reading.
     *
     * @param samples of the trap in time order
     * @param notice what was found
     */
    public static Optional<Sample> over(List<Sample> samples, Notice notice, ClosedLimits limits) {
        Instant coolSince = null;
        for (Sample sample : samples) {
            boolean inside = !Double.isNaN(sample.boxCelsius());
            double celsius = inside ? sample.boxCelsius() : sample.cellCelsius();
            if (Double.isNaN(celsius) || !sample.time().isAfter(notice.raised())) {
                continue;
            }
            boolean cool = celsius < (inside ? limits.warmCelsius() : limits.outsideCelsius());
            coolSince = cool ? coolSince == null ? sample.time() : coolSince : null;
            if (cool && Duration.between(coolSince, sample.time()).compareTo(limits.coolFor()) >= 0) {
                return Optional.of(sample);
            }
        }
        return Optional.empty();
    }

    private static Optional<Notice> climbing(Deque<Sample> recent, Sample now, ClosedLimits limits) {
        if (recent.size() < 3 || now.boxCelsius() < limits.warmCelsius()) {
            return Optional.empty();
        }
        Sample before = recent.stream().skip(recent.size() - 2L).findFirst().orElseThrow();
        Sample coolest = recent.getFirst();
        for (Sample sample : recent) {
            coolest = sample.boxCelsius() < coolest.boxCelsius() ? sample : coolest;
        }
        double climb = Math.min(before.boxCelsius(), now.boxCelsius()) - coolest.boxCelsius();
        if (climb < limits.climbCelsius()) {
            return Optional.empty();
        }
        return Optional.of(new Notice(
                Notice.What.OVERHEATING,
                coolest.time(),
                now.received(),
                String.format(
                        Locale.ROOT,
                        "The closed box climbed from %.1f to %.1f C in %d min. Shade it or open it now.",
                        coolest.boxCelsius(),
                        now.boxCelsius(),
                        Duration.between(coolest.time(), now.time()).toMinutes())));
    }

    private static Notice hot(Instant since, Sample now) {
        return new Notice(
                Notice.What.OVERHEATING,
                since,
                now.received(),
                String.format(
                        Locale.ROOT,
                        "The closed box is at %.1f C. Bees and comb are in danger: shade it or open it now.",
                        now.boxCelsius()));
    }

    private static Notice warmOutside(Instant since, Sample now) {
        return new Notice(
                Notice.What.OVERHEATING,
                since,
                now.received(),
                String.format(
                        Locale.ROOT,
                        "Closed, and %.0f C in the shade for %d min. Nothing measures inside the box: go and feel it.",
                        now.cellCelsius(),
                        Duration.between(since, now.time()).toMinutes()));
    }
}
