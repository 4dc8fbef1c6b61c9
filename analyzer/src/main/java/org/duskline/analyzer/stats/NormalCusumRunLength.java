package org.duskline.analyzer.stats;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * Average run length of the CUSUM of normal values with unit variance: how many values until it alarms.
 *
 * <p>Page's integral equation {@code L(u) = 1 + L(0) P(k - u - shift) + integral over (0, h) of L(y) p(y + k - u -
 * shift) dy}, P and p the normal distribution and density, solved at Gauss-Legendre nodes (Vance 1986, Journal of
 * Quality Technology 18, 188; the chain of Brook and Evans 1972, Biometrika 59, 539 has it as its limit). Values must
 * be independent; where they follow each other the true length is shorter.
 */
public final class NormalCusumRunLength {
    private static final int FEWEST_NODES = 24;
    private static final int NODES_PER_DEVIATION = 4;
    private static final double LONGEST = 1e12;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    private final double allowance;
    private final double decision;

    /**
     * @param allowance in standard deviations of a value, at least 0
     * @param decision in standard deviations of a value, above 0
     */
    public NormalCusumRunLength(double allowance, double decision) {
        if (!(allowance >= 0 && decision > 0)) {
            throw new IllegalArgumentException("A CUSUM needs an allowance of at least 0 and a decision interval above"
                    + " 0, not " + allowance + " and " + decision + ".");
        }
        this.allowance = allowance;
        this.decision = decision;
    }

    /**
     * Mean number of values until the upper side alarms; infinite beyond 10^12, where the equation can no longer be
     * solved.
     *
     * @param shift of the mean, in standard deviations; negative moves away from the limit
     * @param headstart where the sum starts, from 0 up to the decision interval
     */
    public double upper(double shift, double headstart) {
        Nodes nodes = nodes();
        return solve(nodes, shift).at(headstart);
    }

    /** Mean number of values until either side alarms, both sums starting at zero. */
    public double twoSided(double shift) {
        return twoSided(shift, 0);
    }

    /**
     * Mean number of values until either side alarms. Both sides are joined as in Lucas and Crosier 1982, Technometrics
     * 24, 199, which is exact while a headstart is at most half the sum of decision interval and twice the allowance.
     */
    public double twoSided(double shift, double headstart) {
        Nodes nodes = nodes();
        Solution up = solve(nodes, shift);
        Solution down = solve(nodes, -shift);
        double upAtZero = up.at(0);
        double downAtZero = down.at(0);
        double upShare = Double.isInfinite(upAtZero) ? 1 : up.at(headstart) / upAtZero;
        double downShare = Double.isInfinite(downAtZero) ? 1 : down.at(headstart) / downAtZero;
        return (upShare + downShare - 1) / (1 / upAtZero + 1 / downAtZero);
    }

    /**
     * The decision interval whose one-sided run length in control is as wanted.
     *
     * @param allowance in standard deviations, at least 0
     * @param inControl wanted mean number of values between false alarms, above 2 and at
     *     most 10^11
     */
    public static double decisionFor(double allowance, double inControl) {
        if (!(inControl > 2 && inControl <= LONGEST / 10)) {
            throw new IllegalArgumentException(
                    "A run length in control of " + inControl + " is not between 2 and 10^11 and cannot be met.");
        }
        UnivariateFunction excess = decision ->
                Math.log(Math.min(LONGEST, new NormalCusumRunLength(allowance, decision).upper(0, 0)) / inControl);
        double high = 1;
        while (excess.value(high) < 0) {
            high *= 1.5;
        }
        return new BrentSolver(1e-9).solve(200, excess, 1e-6, high);
    }

    /** Enough that more change nothing in the fifth digit. */
    private Nodes nodes() {
        return Nodes.between(0, decision, FEWEST_NODES + (int) Math.ceil(NODES_PER_DEVIATION * decision));
    }

    private Solution solve(Nodes nodes, double shift) {
        int size = nodes.count() + 1;
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(size, size);
        for (int row = 0; row < size; row++) {
            double start = row == 0 ? 0 : nodes.point(row - 1);
            for (int column = 0; column < size; column++) {
                matrix.setEntry(row, column, (row == column ? 1 : 0) - step(nodes, shift, start, column));
            }
        }
        DecompositionSolver solver = new LUDecomposition(matrix).getSolver();
        if (!solver.isNonSingular()) {
            return start -> Double.POSITIVE_INFINITY;
        }
        RealVector lengths = solver.solve(new ArrayRealVector(size, 1.0));
        if (!(lengths.getMinValue() > 0 && lengths.getMaxValue() < LONGEST)) {
            return start -> Double.POSITIVE_INFINITY;
        }
        return start -> {
            double length = 1;
            for (int column = 0; column < size; column++) {
                length += step(nodes, shift, start, column) * lengths.getEntry(column);
            }
            return length;
        };
    }

    private double step(Nodes nodes, double shift, double start, int column) {
        double offset = allowance - start - shift;
        if (column == 0) {
            return NORMAL.cumulativeProbability(offset);
        }
        return nodes.weight(column - 1) * NORMAL.density(nodes.point(column - 1) + offset);
    }

    private interface Solution {
        double at(double start);
    }
}
