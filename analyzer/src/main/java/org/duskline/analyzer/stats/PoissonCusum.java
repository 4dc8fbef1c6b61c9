package org.duskline.analyzer.stats;

/**
 * A one-sided CUSUM of counts.
 *
 * <p>Upper: {@code S = max(0, S + count - reference)}; lower: {@code S = max(0, S + reference - count)}. Source: Lucas
 * 1985, Technometrics 27, 129.
 *
 * @param side whether a rise or a fall of the mean is looked for
 * @param reference the count taken off each time, above 0; see {@link #referenceBetween}
 * @param decision the limit for the sum, above 0
 * @param headstart where the sum starts, from 0 and below the decision interval
 * @param alarm when the sum is an alarm; the run length depends strongly on it
 */
public record PoissonCusum(Side side, double reference, double decision, double headstart, AlarmRule alarm) {
    public PoissonCusum {
        if (!(reference > 0 && decision > 0 && headstart >= 0 && headstart < decision)) {
            throw new IllegalArgumentException("A Poisson CUSUM needs a reference and a decision interval above 0 and a"
                    + " headstart below the latter, not " + reference + ", " + decision + " and " + headstart + ".");
        }
    }

    /** Which way the mean is expected to move. */
    public enum Side {
        UPPER,
        LOWER
    }

    /** When a sum is an alarm. */
    public enum AlarmRule {
        /** The sum reaches the decision interval, as in Lucas 1985. */
        REACHES,
        /** The sum goes beyond it, as in the tabular CUSUM. */
        EXCEEDS
    }

    /**
     * The reference that is quickest to tell two means apart: their difference over the difference of their logarithms
     * (Lucas 1985, from Wald's sequential test).
     *
     * @param inControl usual mean count, above 0
     * @param outOfControl mean to be caught, above 0 and not the same
     */
    public static double referenceBetween(double inControl, double outOfControl) {
        if (!(inControl > 0 && outOfControl > 0 && inControl != outOfControl)) {
            throw new IllegalArgumentException(
                    "Two different means above 0 are needed, not " + inControl + " and " + outOfControl + ".");
        }
        return (outOfControl - inControl) / (Math.log(outOfControl) - Math.log(inControl));
    }

    public double start() {
        return headstart;
    }

    /** The sum after one more count. A missing count (NaN) leaves it as it was. */
    public double next(double sum, double count) {
        if (Double.isNaN(count)) {
            return sum;
        }
        return Math.max(0, sum + (side == Side.UPPER ? count - reference : reference - count));
    }

    public boolean alarms(double sum) {
        return alarm == AlarmRule.REACHES ? sum >= decision : sum > decision;
    }
}
