package org.duskline.analyzer.stats;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Average run length of the two-sided EWMA chart of normal values, with its settled limits from the first value on.
 *
 * <p>{@code L(u) = 1 + 1/w integral over (-h, h) of L(y) p((y - (1 - w) u) / w - shift) dy}, p the normal density,
 * solved at Gauss-Legendre nodes (Crowder 1987, Technometrics 29, 401).
 */
public final class EwmaRunLength {
    private static final int NODES = 80;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private final double weight;
    private final double limit;

    /**
     * @param weight of the newest value, above 0 and at most 1
     * @param width half width of the limits in standard deviations of the average, above 0
     */
    public EwmaRunLength(double weight, double width) {
        if (!(weight > 0 && weight <= 1 && width > 0)) {
            throw new IllegalArgumentException(
                    "An EWMA needs a weight in (0, 1] and a width above 0, not " + weight + " and " + width + ".");
        }
        this.weight = weight;
        this.limit = width * Math.sqrt(weight / (2 - weight));
    }

    /**
     * Mean number of values until the average leaves the limits, starting at the centre.
     *
     * @param shift of the mean, in standard deviations of a value
     */
    public double twoSided(double shift) {
        Nodes nodes = Nodes.between(-limit, limit, NODES);
        int size = nodes.count();
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(size, size);
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                matrix.setEntry(row, column, (row == column ? 1 : 0) - step(nodes, shift, nodes.point(row), column));
            }
        }
        RealVector lengths = new LUDecomposition(matrix).getSolver().solve(new ArrayRealVector(size, 1.0));
        double length = 1;
        for (int column = 0; column < size; column++) {
            length += step(nodes, shift, 0, column) * lengths.getEntry(column);
        }
        return length;
    }

    private double step(Nodes nodes, double shift, double start, int column) {
        double value = (nodes.point(column) - (1 - weight) * start) / weight;
        return nodes.weight(column) / weight * NORMAL.density(value - shift);
    }
}
