package org.duskline.analyzer.stats;

/**
 * The two-sided tabular CUSUM chart with run counters and headstart.
 *
 * <p>{@code S+ = max(0, S+ + x - target - allowance)}, {@code S- = max(0, S- + target - allowance - x)}; a side alarms
 * when it exceeds the decision interval. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3; run counters
 * as in Montgomery and Runger, Applied Statistics and Probability for Engineers, 3rd ed., table 16-8; headstart as in
 * Lucas and Crosier 1982, Technometrics 24, 199.
 *
 * @param target the value in control
 * @param allowance slack on each side, in units of the value; at least 0. Half the shift to be caught is usual
 * @param decision the limit for the sums, in units of the value; above 0
 * @param headstart where both sums start, from 0 up to the decision interval
 */
public record TabularCusum(double target, double allowance, double decision, double headstart) {
    public TabularCusum {
        if (!(allowance >= 0 && decision > 0 && headstart >= 0 && headstart <= decision)) {
            throw new IllegalArgumentException("A CUSUM needs an allowance of at least 0, a decision interval above 0"
                    + " and a headstart between them, not " + allowance + ", " + decision + " and " + headstart + ".");
        }
    }

    /** A chart whose sums start at zero. */
    public static TabularCusum of(double target, double allowance, double decision) {
        return new TabularCusum(target, allowance, decision, 0);
    }

    /**
     * The chart after some values.
     *
     * @param high sum of what lay above target and allowance
     * @param highRun values since {@code high} was last zero: it left zero that many values ago
     * @param low sum of what lay below
     * @param lowRun values since {@code low} was last zero
     * @param highAlarm whether {@code high} exceeds the decision interval
     * @param lowAlarm whether {@code low} does
     */
    public record State(double high, int highRun, double low, int lowRun, boolean highAlarm, boolean lowAlarm) {}

    public State start() {
        return new State(headstart, 0, headstart, 0, false, false);
    }

    /** The chart after one more value. A missing value (NaN) leaves it as it was. */
    public State next(State before, double value) {
        if (Double.isNaN(value)) {
            return before;
        }
        double high = Math.max(0, before.high + value - target - allowance);
        double low = Math.max(0, before.low + target - allowance - value);
        return new State(
                high,
                high > 0 ? before.highRun + 1 : 0,
                low,
                low > 0 ? before.lowRun + 1 : 0,
                high > decision,
                low > decision);
    }
}
