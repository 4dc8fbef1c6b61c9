package org.duskline.analyzer.curve;

import java.util.Arrays;

/** The rows of a curve while it is being made; grows as needed. */
final class Rows {
    private static final int QUANTITIES = Quantity.values().length;
    private static final int FIRST_SIZE = 256;

    long[] timesMillis = new long[FIRST_SIZE];
    final double[][] lows = new double[QUANTITIES][FIRST_SIZE];
    final double[][] highs = new double[QUANTITIES][FIRST_SIZE];
    final double[][] means = new double[QUANTITIES][FIRST_SIZE];
    int size;

    void add(long timeMillis, Column column) {
        makeRoom();
        timesMillis[size] = timeMillis;
        for (int quantity = 0; quantity < QUANTITIES; quantity++) {
            lows[quantity][size] = column.low(quantity);
            highs[quantity][size] = column.high(quantity);
            means[quantity][size] = column.mean(quantity);
        }
        size++;
    }

    long lastTimeMillis() {
        return timesMillis[size - 1];
    }

    double[][] trimmed(double[][] values) {
        return Arrays.stream(values).map(row -> Arrays.copyOf(row, size)).toArray(double[][]::new);
    }

    private void makeRoom() {
        if (size < timesMillis.length) {
            return;
        }
        int larger = size * 2;
        timesMillis = Arrays.copyOf(timesMillis, larger);
        for (double[][] values : new double[][][] {lows, highs, means}) {
            for (int quantity = 0; quantity < QUANTITIES; quantity++) {
                values[quantity] = Arrays.copyOf(values[quantity], larger);
            }
        }
    }
}
