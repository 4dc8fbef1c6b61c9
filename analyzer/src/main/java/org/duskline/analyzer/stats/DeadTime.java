package org.duskline.analyzer.stats;

/**
 * A counter that is blind for a fixed time after each event it counts, and whose blindness is not drawn out by events
 * it misses (non-paralyzable). Source: Knoll, Radiation Detection and Measurement, chapter 4: {@code m = n / (1 + n
 * tau)}, {@code n = m / (1 - m tau)}. Rates and blind time share a unit of time.
 *
 * @param blind time after each counted event, at least 0
 */
public record DeadTime(double blind) {
    public DeadTime {
        if (!(blind >= 0)) {
            throw new IllegalArgumentException("A blind time of " + blind + " is below 0.");
        }
    }

    /** The rate that is counted while events come at the true rate. */
    public double observedRate(double trueRate) {
        return trueRate / (1 + trueRate * blind);
    }

    /**
     * The true rate behind a counted one. Infinite where the counter was saturated: it counted as fast as it can, and
     * any higher rate would look the same.
     */
    public double trueRate(double observedRate) {
        double free = 1 - observedRate * blind;
        return free <= 0 ? Double.POSITIVE_INFINITY : observedRate / free;
    }

    /** The fastest that can be counted; infinite without a blind time. */
    public double saturation() {
        return 1 / blind;
    }

    /** How many events came while so many were counted over a duration; infinite where saturated. */
    public double trueCount(double counted, double duration) {
        return trueRate(counted / duration) * duration;
    }
}
