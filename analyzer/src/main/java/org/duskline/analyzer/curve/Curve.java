package org.duskline.analyzer.curve;

import java.time.Instant;
import java.util.Arrays;

/**
 * A curve ready to be drawn: rows in time order, each with the lowest, highest and mean value of what it stands for. A
 * row in which every quantity is NaN is a gap: the line is not drawn across it.
 */
public final class Curve {
    private final Instant from;
    private final Instant until;
    private final long[] timesMillis;
    private final double[][] lows;
    private final double[][] highs;
    private final double[][] means;
    private final int points;

    Curve(Instant from, Instant until, Rows rows, int points) {
        this.from = from;
        this.until = until;
        this.timesMillis = Arrays.copyOf(rows.timesMillis, rows.size);
        this.lows = rows.trimmed(rows.lows);
        this.highs = rows.trimmed(rows.highs);
        this.means = rows.trimmed(rows.means);
        this.points = points;
    }

    public Instant from() {
        return from;
    }

    public Instant until() {
        return until;
    }

    /** Number of rows, gaps included. */
    public int size() {
        return timesMillis.length;
    }

    /** Number of points that the rows were made from. */
    public int points() {
        return points;
    }

    public long timeMillis(int row) {
        return timesMillis[row];
    }

    public double low(Quantity quantity, int row) {
        return lows[quantity.ordinal()][row];
    }

    public double high(Quantity quantity, int row) {
        return highs[quantity.ordinal()][row];
    }

    public double mean(Quantity quantity, int row) {
        return means[quantity.ordinal()][row];
    }

    /** Whether any row knows this quantity; a trap without a scale has no weight. */
    public boolean has(Quantity quantity) {
        return Arrays.stream(highs[quantity.ordinal()]).anyMatch(value -> !Double.isNaN(value));
    }

    /** The highest value of a quantity; NaN when it was never measured. */
    public double highest(Quantity quantity) {
        return Arrays.stream(highs[quantity.ordinal()])
                .filter(value -> !Double.isNaN(value))
                .max()
                .orElse(Double.NaN);
    }

    /** The lowest value of a quantity; NaN when it was never measured. */
    public double lowest(Quantity quantity) {
        return Arrays.stream(lows[quantity.ordinal()])
                .filter(value -> !Double.isNaN(value))
                .min()
                .orElse(Double.NaN);
    }
}
