package org.duskline.analyzer.stats;

/**
 * Siegmund's approximation to the average run length of the normal CUSUM: within a few percent, in a few operations.
 *
 * <p>{@code (exp(-2 d b) + 2 d b - 1) / (2 d^2)} with {@code d = shift - allowance} and {@code b = decision + 1.166};
 * {@code b^2} at {@code d = 0}. Source: Montgomery, Introduction to Statistical Quality Control, 7th ed., equations 9.6
 * and 9.7, p 423.
 */
public final class SiegmundRunLength {
    private static final double OVERSHOOT = 1.166;

    private SiegmundRunLength() {}

    /**
     * Mean number of values until the upper side alarms.
     *
     * @param allowance in standard deviations
     * @param decision in standard deviations
     * @param shift of the mean towards the limit, in standard deviations
     */
    public static double upper(double allowance, double decision, double shift) {
        double drift = shift - allowance;
        double barrier = decision + OVERSHOOT;
        if (drift == 0) {
            return barrier * barrier;
        }
        return (Math.expm1(-2 * drift * barrier) + 2 * drift * barrier) / (2 * drift * drift);
    }

    /** Mean number of values until either side alarms. */
    public static double twoSided(double allowance, double decision, double shift) {
        return 1 / (1 / upper(allowance, decision, shift) + 1 / upper(allowance, decision, -shift));
    }
}
