package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.collector.wire.Sample;

/** What an entrance counter says about flight. */
final class Traffic {
    /** Fewer crossings a minute than this is a straggler or a fanning guard, not flight; our choice. */
    static final double FLYING_PER_MINUTE = 0.5;

    private Traffic() {}

    /** Crossings from one sample to the next; NaN without a counter or where it restarted. */
    static double crossings(Sample before, Sample after) {
        double in = after.in() - before.in();
        double out = after.out() - before.out();
        boolean known = in >= 0 && out >= 0;
        return known ? in + out : Double.NaN;
    }

    static double perMinute(Sample before, Sample after) {
        double minutes = Duration.between(before.time(), after.time()).toMillis() / 60_000.0;
        return minutes > 0 ? crossings(before, after) / minutes : Double.NaN;
    }

    /** End of the last stretch in which bees flew; empty where none did or none could be counted. */
    static Optional<Instant> lastFlight(List<Sample> samples) {
        Instant last = null;
        for (int i = 1; i < samples.size(); i++) {
            if (perMinute(samples.get(i - 1), samples.get(i)) >= FLYING_PER_MINUTE) {
                last = samples.get(i).time();
            }
        }
        return Optional.ofNullable(last);
    }
}
