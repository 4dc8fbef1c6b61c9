package org.duskline.analyzer.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * How good stated chances were, once it is known what happened.
 *
 * <p>The Brier score is the mean of {@code (chance - outcome)^2}, 0 at best, 1 at worst (Brier 1950, Monthly Weather
 * Review 78, 1). It splits into {@code reliability - resolution + uncertainty}, exactly where all chances of a bin are
 * alike (Murphy 1973, Journal of Applied Meteorology 12, 595).
 *
 * @param forecasts how many chances were judged
 * @param brier the Brier score
 * @param baseRate share of outcomes that happened
 * @param bins the reliability diagram, in order of the chance, empty bins left out
 */
public record ForecastScore(int forecasts, double brier, double baseRate, List<Bin> bins) {

    /**
     * Forecasts of about the same chance.
     *
     * @param meanChance their mean
     * @param happened how often it happened, out of how many
     */
    public record Bin(double meanChance, Proportion happened) {}

    public ForecastScore {
        bins = List.copyOf(bins);
    }

    /**
     * Judges forecasts.
     *
     * @param chances from 0 to 1, at least one
     * @param outcomes whether each happened, as many
     * @param bins how many equal bins of the chance the diagram has, at least 1
     */
    public static ForecastScore of(double[] chances, boolean[] outcomes, int bins) {
        if (chances.length != outcomes.length || chances.length == 0 || bins < 1) {
            throw new IllegalArgumentException("Judging needs chances, as many outcomes, and a bin; there are "
                    + chances.length + " chances, " + outcomes.length + " outcomes and " + bins + " bins.");
        }
        double[] sums = new double[bins];
        int[] happened = new int[bins];
        int[] counts = new int[bins];
        double squares = 0;
        int all = 0;
        for (int i = 0; i < chances.length; i++) {
            double chance = chances[i];
            if (!(chance >= 0 && chance <= 1)) {
                throw new IllegalArgumentException("A chance lies between 0 and 1, not at " + chance + ".");
            }
            double miss = chance - (outcomes[i] ? 1 : 0);
            squares += miss * miss;
            int bin = Math.min(bins - 1, (int) (chance * bins));
            sums[bin] += chance;
            counts[bin]++;
            happened[bin] += outcomes[i] ? 1 : 0;
            all += outcomes[i] ? 1 : 0;
        }
        List<Bin> filled = new ArrayList<>();
        for (int bin = 0; bin < bins; bin++) {
            if (counts[bin] > 0) {
                filled.add(new Bin(sums[bin] / counts[bin], new Proportion(happened[bin], counts[bin])));
            }
        }
        return new ForecastScore(chances.length, squares / chances.length, (double) all / chances.length, filled);
    }

    /** Mean squared distance of the chances from what happened at them; 0 is calibrated. */
    public double reliability() {
        return weighted(bin -> bin.meanChance() - bin.happened().estimate());
    }

    /** How far the bins' outcomes spread about the base rate; more is better. */
    public double resolution() {
        return weighted(bin -> bin.happened().estimate() - baseRate);
    }

    /** The Brier score of always stating the base rate. */
    public double uncertainty() {
        return baseRate * (1 - baseRate);
    }

    /** Share of the base rate's score that the forecasts save: 1 at best, 0 no better, below 0 worse. */
    public double skill() {
        return 1 - brier / uncertainty();
    }

    private double weighted(ToDoubleFunction<Bin> distance) {
        double sum = 0;
        for (Bin bin : bins) {
            double d = distance.applyAsDouble(bin);
            sum += d * d * bin.happened().trials();
        }
        return sum / forecasts;
    }
}
