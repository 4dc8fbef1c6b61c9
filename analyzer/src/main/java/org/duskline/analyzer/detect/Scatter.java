package org.duskline.analyzer.detect;

import org.duskline.analyzer.series.TrapSeries;

/**
 * How crossings scatter from sample to sample. Bees come one by one and go out as they came in, so that their counts
 * scatter as chance does and a little more, as their number wanders; a web that swings in gusts before the beams, and ants
 * that mill about, scatter by far more.
 */
final class Scatter {
    private static final int FEWEST_SAMPLES = 5;

    private Scatter() {}

    /**
     * The scatter of the rate that Poisson's law leaves unexplained, as a squared coefficient of variation, less one
     * standard error; negative where there is none, 0 where there are too few samples. The variance is taken from
     * successive differences, which a slow rise leaves alone (von Neumann 1941); over the mean it is the index of
     * dispersion (Fisher 1925), 1 under Poisson's law, and (dispersion - 1) / mean is the variance of the rate itself
     * over its square.
     */
    static double unexplained(TrapSeries series, long fromMillis, int at) {
        int from = Math.max(1, series.firstAfter(fromMillis));
        double differences = 0;
        double sums = 0;
        double before = Double.NaN;
        for (int i = from; i <= at; i++) {
            double crossings = in(series, i) + out(series, i);
            if (!Double.isNaN(before)) {
                differences += (crossings - before) * (crossings - before);
                sums += crossings + before;
            }
            before = crossings;
        }
        int samples = at - from + 1;
        if (samples < FEWEST_SAMPLES || !(sums > 0)) {
            return 0;
        }
        double mean = sums / 2 / (samples - 1);
        // The variance of a mean square successive difference over n is 3 / n times its square (von Neumann 1941).
        return (differences / sums - 1 - Math.sqrt(3.0 / samples)) / mean;
    }

    /**
     * How lopsided single samples are: the mean of (in - out)^2 / (in + out), which is chi-squared over one degree of
     * freedom, 1 in the mean, where each crossing is as likely inward as outward; 1 where nothing passed.
     */
    static double lopsided(TrapSeries series, long fromMillis, int at) {
        double sum = 0;
        int samples = 0;
        for (int i = Math.max(1, series.firstAfter(fromMillis)); i <= at; i++) {
            double in = in(series, i);
            double out = out(series, i);
            if (in + out > 0) {
                sum += (in - out) * (in - out) / (in + out);
                samples++;
            }
        }
        return samples == 0 ? 1 : sum / samples;
    }

    private static double in(TrapSeries series, int i) {
        return series.totalIn(i) - series.totalIn(i - 1);
    }

    private static double out(TrapSeries series, int i) {
        return series.totalOut(i) - series.totalOut(i - 1);
    }
}
