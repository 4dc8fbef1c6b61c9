package org.duskline.analyzer.stats;

import java.util.Arrays;
import org.apache.commons.statistics.descriptive.Median;

/**
 * Location and scale that a few wild values cannot bend. Every scale is in units of a normal standard deviation.
 *
 * <p>All take values without NaN, in any order, and leave the array as it was. A scale of 0 is possible (more than half
 * the values alike): put a floor under it before dividing.
 */
public final class Robust {
    private static final double NORMAL_MAD = 1.4826;
    private static final double NORMAL_SN = 1.1926;
    private static final double NORMAL_QN = 2.21914;
    private static final double HUBER_TUNING = 1.5;
    private static final double HUBER_TOLERANCE = 1e-12;
    private static final int HUBER_ROUNDS = 200;

    private Robust() {}

    /** The middle value; NaN for no values. */
    public static double median(double... values) {
        return Median.withDefaults().evaluate(values);
    }

    /**
     * Median absolute deviation from the median, times 1.4826 (Hampel 1974, Journal of the American Statistical
     * Association 69, 383). NaN for no values.
     */
    public static double mad(double... values) {
        double middle = median(values);
        return NORMAL_MAD
                * median(Arrays.stream(values).map(x -> Math.abs(x - middle)).toArray());
    }

    /**
     * Huber's location with the scale held at {@link #mad} and values pulled in to 1.5 scales (Huber 1981, Robust
     * Statistics, 6.4). The median where the scale is 0.
     */
    public static double huber(double... values) {
        double scale = mad(values);
        double location = median(values);
        if (!(scale > 0)) {
            return location;
        }
        for (int round = 0; round < HUBER_ROUNDS; round++) {
            double sum = 0;
            for (double value : values) {
                double reach = HUBER_TUNING * scale;
                sum += Math.max(location - reach, Math.min(location + reach, value));
            }
            double next = sum / values.length;
            boolean settled = Math.abs(next - location) < HUBER_TOLERANCE * scale;
            location = next;
            if (settled) {
                break;
            }
        }
        return location;
    }

    /**
     * Sn: the low median over each value of the high median of its distances to the others, times 1.1926 and the
     * correction for few values (Rousseeuw and Croux 1993, Journal of the American Statistical Association 88, 1273;
     * Croux and Rousseeuw 1992, Computational Statistics 1, 411). NaN below two values. Time grows with the square.
     */
    public static double sn(double... values) {
        int size = values.length;
        if (size < 2) {
            return Double.NaN;
        }
        double[] medians = new double[size];
        for (int i = 0; i < size; i++) {
            double here = values[i];
            double[] distances =
                    Arrays.stream(values).map(x -> Math.abs(x - here)).sorted().toArray();
            medians[i] = distances[size / 2];
        }
        Arrays.sort(medians);
        return SmallSample.sn(size) * NORMAL_SN * medians[(size + 1) / 2 - 1];
    }

    /**
     * Qn: the first quartile of the distances between pairs, times 2.21914 and the correction for few values (Rousseeuw
     * and Croux 1993; Croux and Rousseeuw 1992, as for {@link #sn}). NaN below two values. Time grows with the square.
     */
    public static double qn(double... values) {
        int size = values.length;
        if (size < 2) {
            return Double.NaN;
        }
        double[] distances = new double[size * (size - 1) / 2];
        int filled = 0;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < i; j++) {
                distances[filled++] = Math.abs(values[i] - values[j]);
            }
        }
        Arrays.sort(distances);
        int half = size / 2 + 1;
        return SmallSample.qn(size) * NORMAL_QN * distances[half * (half - 1) / 2 - 1];
    }
}
