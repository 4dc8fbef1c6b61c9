package org.duskline.analyzer.stats;

/**
 * An interval on the real line.
 *
 * @param low lower end
 * @param high upper end, never below {@code low}; may be infinite
 */
public record Interval(double low, double high) {
    public Interval {
        if (low > high) {
            throw new IllegalArgumentException("An interval cannot run from " + low + " down to " + high + ".");
        }
    }

    public boolean contains(double value) {
        return low <= value && value <= high;
    }

    public double width() {
        return high - low;
    }

    static double requireConfidence(double confidence) {
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException(
                    "A confidence of " + confidence + " is not between 0 and 1; 95 % is written 0.95.");
        }
        return confidence;
    }
}
