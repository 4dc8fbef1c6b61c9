package org.duskline.analyzer.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A straight line that a few wild points cannot bend: the median of the slopes between all pairs. Source: Sen 1968,
 * Journal of the American Statistical Association 63, 1379.
 *
 * @param slope median slope, y per x
 * @param intercept median of y minus slope times median of x
 * @param slopes interval of the slope, from Kendall's statistic with ties in y allowed for
 */
public record TheilSen(double slope, double intercept, Interval slopes) {

    /**
     * Fits the line. Time grows with the square of the points.
     *
     * @param x places, at least two of them different
     * @param y values, as many
     * @param confidence of the interval, between 0 and 1
     */
    public static TheilSen fit(double[] x, double[] y, double confidence) {
        Interval.requireConfidence(confidence);
        if (x.length != y.length) {
            throw new IllegalArgumentException(
                    "A line needs as many values as places, not " + y.length + " values at " + x.length + " places.");
        }
        List<Double> between = new ArrayList<>();
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < i; j++) {
                if (x[i] != x[j]) {
                    between.add((y[i] - y[j]) / (x[i] - x[j]));
                }
            }
        }
        if (between.isEmpty()) {
            throw new IllegalArgumentException("A line needs values at two different places at least.");
        }
        Collections.sort(between);
        double[] sorted = between.stream().mapToDouble(Double::doubleValue).toArray();
        double slope = Robust.median(sorted);
        double intercept = Robust.median(y) - slope * Robust.median(x);
        return new TheilSen(slope, intercept, interval(sorted, y, confidence));
    }

    public double at(double x) {
        return intercept + slope * x;
    }

    private static Interval interval(double[] sorted, double[] y, double confidence) {
        double spread = -NormalDistribution.of(0, 1).inverseCumulativeProbability((1 - confidence) / 2)
                * Math.sqrt(variance(y));
        int count = sorted.length;
        int low = (int) Math.max(0, Math.rint((count - spread) / 2) - 1);
        int high = (int) Math.min(count - 1, Math.rint((count + spread) / 2));
        return new Interval(sorted[low], sorted[high]);
    }

    private static double variance(double[] y) {
        double size = y.length;
        double ties = 0;
        double[] ordered = y.clone();
        Arrays.sort(ordered);
        for (int start = 0; start < ordered.length; ) {
            int end = start;
            while (end < ordered.length && ordered[end] == ordered[start]) {
                end++;
            }
            double group = end - start;
            ties += group * (group - 1) * (2 * group + 5);
            start = end;
        }
        return (size * (size - 1) * (2 * size + 5) - ties) / 18;
    }
}
