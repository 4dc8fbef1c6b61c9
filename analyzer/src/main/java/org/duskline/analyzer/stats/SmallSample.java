package org.duskline.analyzer.stats;

/**
 * Factors that make Sn and Qn right on average for few normal values. Sn: Croux and Rousseeuw 1992, Computational
 * Statistics 1, 411. Qn: as simulated anew for R's package robustbase (its function {@code Qn}); the table for up to 12
 * values is recalled, agrees with the three printed digits of Croux and Rousseeuw, and is checked by simulation.
 */
final class SmallSample {
    private static final double[] SN = {0.743, 1.851, 0.954, 1.351, 0.993, 1.198, 1.005, 1.131};
    private static final double[] QN = {
        0.399356, 0.99365, 0.51321, 0.84401, 0.61220, 0.85877, 0.66993, 0.87344, 0.72014, 0.88906, 0.75743
    };

    private SmallSample() {}

    static double sn(int size) {
        if (size < SN.length + 2) {
            return SN[size - 2];
        }
        return size % 2 == 0 ? 1 : size / (size - 0.9);
    }

    static double qn(int size) {
        if (size < QN.length + 2) {
            return QN[size - 2];
        }
        double n = size;
        double excess = size % 2 == 0
                ? (3.67561 + (1.9654 + (6.987 - 77 / n) / n) / n) / n
                : (1.60188 + (-2.1284 - 5.172 / n) / n) / n;
        return 1 / (1 + excess);
    }
}
