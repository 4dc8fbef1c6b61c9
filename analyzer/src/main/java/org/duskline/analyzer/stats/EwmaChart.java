package org.duskline.analyzer.stats;

/**
 * The exponentially weighted moving average chart with limits that widen from the first value on.
 *
 * <p>{@code z = weight x + (1 - weight) z}; limits {@code centre +- width sigma sqrt(w / (2 - w) (1 - (1 - w)^(2 t)))}.
 * Source: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.4; the time-varying limits from Lucas and Saccucci
 * 1990, Technometrics 32, 1.
 *
 * @param centre the value in control
 * @param sigma standard deviation of one value, at least 0
 * @param weight of the newest value, above 0 and at most 1
 * @param width half width of the limits in standard deviations of the average, above 0; 3 is usual
 */
public record EwmaChart(double centre, double sigma, double weight, double width) {
    public EwmaChart {
        if (!(sigma >= 0 && weight > 0 && weight <= 1 && width > 0)) {
            throw new IllegalArgumentException("An EWMA chart needs sigma of at least 0, a weight in (0, 1] and a width"
                    + " above 0, not " + sigma + ", " + weight + " and " + width + ".");
        }
    }

    /**
     * The chart after some values.
     *
     * @param values how many values it has seen
     * @param average the weighted average
     * @param low lower limit for this average
     * @param high upper limit for this average
     */
    public record State(long values, double average, double low, double high) {
        public boolean alarm() {
            return average > high || average < low;
        }
    }

    public State start() {
        return new State(0, centre, centre, centre);
    }

    /** The chart after one more value. A missing value (NaN) leaves it as it was. */
    public State next(State before, double value) {
        if (Double.isNaN(value)) {
            return before;
        }
        long values = before.values + 1;
        double average = weight * value + (1 - weight) * before.average;
        double half = width * sigma * Math.sqrt(weight / (2 - weight) * (1 - Math.pow(1 - weight, 2.0 * values)));
        return new State(values, average, centre - half, centre + half);
    }

    /** The limits that the chart settles to. */
    public Interval settledLimits() {
        double half = width * sigma * Math.sqrt(weight / (2 - weight));
        return new Interval(centre - half, centre + half);
    }
}
