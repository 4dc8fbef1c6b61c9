package org.duskline.analyzer.stats;

/**
 * How far neighbouring values of a series go together. Charts that take values for independent alarm too often where
 * this is far from 0.
 */
public final class SerialCorrelation {
    private SerialCorrelation() {}

    /**
     * Lag-1 autocorrelation, {@code sum (x_t - m)(x_t+1 - m) / sum (x_t - m)^2}, as certified in NIST's Statistical
     * Reference Datasets (univariate). NaN for a constant series.
     */
    public static double lagOne(double... values) {
        double mean = 0;
        for (double value : values) {
            mean += value;
        }
        mean /= values.length;
        double remainder = 0;
        for (double value : values) {
            remainder += value - mean;
        }
        mean += remainder / values.length;
        double products = 0;
        double squares = 0;
        for (int i = 0; i < values.length; i++) {
            double here = values[i] - mean;
            squares += here * here;
            if (i + 1 < values.length) {
                products += here * (values[i + 1] - mean);
            }
        }
        return products / squares;
    }
}
