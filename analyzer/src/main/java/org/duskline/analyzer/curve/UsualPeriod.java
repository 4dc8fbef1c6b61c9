package org.duskline.analyzer.curve;

import java.time.Duration;

/**
 * Follows how far apart a node's samples usually are, as a running median, so that a silence can be told from its
 * ordinary pace. Nodes sample every one to ten minutes and may change their pace.
 */
final class UsualPeriod {
    private static final long SHORTEST_GAP_MILLIS = Duration.ofMinutes(10).toMillis();
    private static final long LONGEST_GAP_MILLIS = Duration.ofMinutes(45).toMillis();
    private static final double PERIODS_TO_A_GAP = 3.5;
    private static final double STEP = 0.1;

    private double periodMillis = Double.NaN;

    void follow(long apartMillis) {
        if (apartMillis <= 0) {
            return;
        }
        if (Double.isNaN(periodMillis)) {
            periodMillis = apartMillis;
            return;
        }
        periodMillis *= 1 + STEP * Math.signum(apartMillis - periodMillis);
    }

    /** The silence, in milliseconds, from which a curve is drawn with a gap. */
    long gapMillis() {
        if (Double.isNaN(periodMillis)) {
            return LONGEST_GAP_MILLIS;
        }
        return Math.max(SHORTEST_GAP_MILLIS, Math.min(LONGEST_GAP_MILLIS, Math.round(PERIODS_TO_A_GAP * periodMillis)));
    }
}
