package org.duskline.analyzer.stats;

/**
 * A change point by ranks, for series whose noise is not normal. Source: Pettitt 1979, Applied Statistics 28, 126.
 *
 * @param length how many values come before the change
 * @param statistic the largest of the rank sums, K
 * @param pValue {@code 2 exp(-6 K^2 / (n^3 + n^2))}, at most 1; good while small
 */
public record Pettitt(int length, long statistic, double pValue) {

    /** Finds the most likely change in a series of at least two values in time order, no NaN. */
    public static Pettitt of(double... values) {
        int size = values.length;
        if (size < 2) {
            throw new IllegalArgumentException("A change cannot be looked for in " + size + " values.");
        }
        long sum = 0;
        long most = -1;
        int best = 1;
        for (int length = 1; length < size; length++) {
            for (double other : values) {
                sum += Double.compare(values[length - 1], other) < 0 ? -1 : values[length - 1] > other ? 1 : 0;
            }
            if (Math.abs(sum) > most) {
                most = Math.abs(sum);
                best = length;
            }
        }
        double cubed = (double) size * size * size + (double) size * size;
        return new Pettitt(best, most, Math.min(1, 2 * Math.exp(-6.0 * most * most / cubed)));
    }
}
