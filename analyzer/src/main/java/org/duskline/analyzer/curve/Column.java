package org.duskline.analyzer.curve;

import java.util.Arrays;

/** What falls into one pixel column: lowest, highest and mean of each quantity. */
final class Column {
    private static final Quantity[] QUANTITIES = Quantity.values();

    private final double[] lows = new double[QUANTITIES.length];
    private final double[] highs = new double[QUANTITIES.length];
    private final double[] sums = new double[QUANTITIES.length];
    private final int[] counts = new int[QUANTITIES.length];
    private int points;
    private long onlyTimeMillis;

    Column() {
        clear();
    }

    void clear() {
        Arrays.fill(lows, Double.NaN);
        Arrays.fill(highs, Double.NaN);
        Arrays.fill(sums, 0);
        Arrays.fill(counts, 0);
        points = 0;
    }

    void add(CurvePoint point) {
        points++;
        onlyTimeMillis = point.timeMillis();
        for (Quantity quantity : QUANTITIES) {
            double value = point.value(quantity);
            if (!Double.isNaN(value)) {
                add(quantity.ordinal(), value);
            }
        }
    }

    private void add(int quantity, double value) {
        boolean first = counts[quantity] == 0;
        lows[quantity] = first ? value : Math.min(lows[quantity], value);
        highs[quantity] = first ? value : Math.max(highs[quantity], value);
        sums[quantity] += value;
        counts[quantity]++;
    }

    boolean isEmpty() {
        return points == 0;
    }

    /** The one point's own time, so that a curve that needs no thinning is drawn where it was measured. */
    long timeMillis(long centreMillis) {
        return points == 1 ? onlyTimeMillis : centreMillis;
    }

    double low(int quantity) {
        return lows[quantity];
    }

    double high(int quantity) {
        return highs[quantity];
    }

    double mean(int quantity) {
        return counts[quantity] == 0 ? Double.NaN : sums[quantity] / counts[quantity];
    }
}
