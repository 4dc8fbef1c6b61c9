package org.duskline.analyzer.stats;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * Exact average run length of a Poisson CUSUM, for both alarm rules.
 *
 * <p>With reference, decision interval and headstart on a common grid the sum is a Markov chain of finitely many
 * states; the mean time to absorption solves {@code (I - R) L = 1} (Brook and Evans 1972, Biometrika 59, 539; Lucas
 * 1985, Technometrics 27, 129).
 */
public final class PoissonCusumRunLength {
    private static final int FINEST_GRID = 1000;
    private static final int MOST_STATES = 1500;
    private static final double ROUNDING = 1e-9;

    private PoissonCusumRunLength() {}

    /**
     * Mean number of counts until the alarm.
     *
     * @param chart whose reference, decision interval and headstart are multiples of one over some number up to 1000
     * @param mean of a count, above 0
     */
    public static double of(PoissonCusum chart, double mean) {
        int grid = grid(chart);
        int top = (int) Math.round(chart.decision() * grid);
        int states = chart.alarm() == PoissonCusum.AlarmRule.EXCEEDS ? top + 1 : top;
        if (states > MOST_STATES) {
            throw new IllegalArgumentException("The run length of a chart with " + states
                    + " states takes too long; round its reference and decision interval more coarsely.");
        }
        int reference = (int) Math.round(chart.reference() * grid);
        PoissonDistribution counts = PoissonDistribution.of(mean);
        Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(states, states);
        for (int from = 0; from < states; from++) {
            for (int to = 0; to < states; to++) {
                double chance = chart.side() == PoissonCusum.Side.UPPER
                        ? rising(counts, from - reference, to, grid)
                        : falling(counts, from + reference, to, grid);
                matrix.setEntry(from, to, (from == to ? 1 : 0) - chance);
            }
        }
        RealVector lengths = new LUDecomposition(matrix).getSolver().solve(new ArrayRealVector(states, 1.0));
        return lengths.getEntry((int) Math.round(chart.headstart() * grid));
    }

    private static double rising(PoissonDistribution counts, int base, int to, int grid) {
        if (to == 0) {
            return base > 0 ? 0 : counts.cumulativeProbability(Math.floorDiv(-base, grid));
        }
        int needed = to - base;
        return needed >= 0 && needed % grid == 0 ? counts.probability(needed / grid) : 0;
    }

    private static double falling(PoissonDistribution counts, int base, int to, int grid) {
        if (to == 0) {
            return counts.survivalProbability(Math.floorDiv(base + grid - 1, grid) - 1);
        }
        int needed = base - to;
        return needed >= 0 && needed % grid == 0 ? counts.probability(needed / grid) : 0;
    }

    private static int grid(PoissonCusum chart) {
        for (int grid = 1; grid <= FINEST_GRID; grid++) {
            if (onGrid(chart.reference(), grid) && onGrid(chart.decision(), grid) && onGrid(chart.headstart(), grid)) {
                return grid;
            }
        }
        throw new IllegalArgumentException("Reference " + chart.reference() + ", decision interval " + chart.decision()
                + " and headstart " + chart.headstart() + " share no grid; round them, say to a tenth.");
    }

    private static boolean onGrid(double value, int grid) {
        double scaled = value * grid;
        return Math.abs(scaled - Math.rint(scaled)) < ROUNDING * grid;
    }
}
