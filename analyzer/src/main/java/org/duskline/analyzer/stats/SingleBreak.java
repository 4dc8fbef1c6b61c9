package org.duskline.analyzer.stats;

/**
 * The one place where a series splits best into two levels, by least squares. Source: Bai 1994, Journal of Time Series
 * Analysis 15, 453; the F statistic as in Andrews 1993, Econometrica 61, 821.
 *
 * @param length how many values the first level has: the break lies after that many
 * @param before mean of the first level
 * @param after mean of the second level
 * @param residual sum of squares about the two levels
 * @param whole sum of squares about one level
 * @param fStatistic largest F statistic of a break, two levels against one; its own table applies, not the F table
 */
public record SingleBreak(int length, double before, double after, double residual, double whole, double fStatistic) {

    /**
     * Finds the break.
     *
     * @param values in time order, no NaN
     * @param shortest fewest values of a level, at least 1
     */
    public static SingleBreak of(double[] values, int shortest) {
        int size = values.length;
        if (shortest < 1 || size < 2 * shortest) {
            throw new IllegalArgumentException(
                    "A break between levels of " + shortest + " values or more cannot be looked for in " + size + ".");
        }
        double mean = 0;
        for (double value : values) {
            mean += value / size;
        }
        double whole = 0;
        for (double value : values) {
            whole += (value - mean) * (value - mean);
        }
        int best = -1;
        double most = -1;
        double bestSum = 0;
        double sum = 0;
        for (int length = 1; length <= size - shortest; length++) {
            sum += values[length - 1] - mean;
            double explained = sum * sum * size / ((double) length * (size - length));
            if (length >= shortest && explained > most) {
                most = explained;
                best = length;
                bestSum = sum;
            }
        }
        double residual = Math.max(0, whole - most);
        return new SingleBreak(
                best,
                mean + bestSum / best,
                mean - bestSum / (size - best),
                residual,
                whole,
                most / (residual / (size - 2)));
    }

    /** Level after minus level before. */
    public double step() {
        return after - before;
    }
}
