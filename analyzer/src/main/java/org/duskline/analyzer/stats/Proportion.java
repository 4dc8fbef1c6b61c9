package org.duskline.analyzer.stats;

import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * So many of so many, with honest intervals.
 *
 * @param successes from 0 to {@code trials}
 * @param trials at least 1
 */
public record Proportion(int successes, int trials) {
    public Proportion {
        if (trials < 1 || successes < 0 || successes > trials) {
            throw new IllegalArgumentException(successes + " of " + trials + " is no proportion.");
        }
    }

    public double estimate() {
        return (double) successes / trials;
    }

    /**
     * The exact interval: covers at least as often as said. Source: Clopper and Pearson 1934, Biometrika 26, 404, by
     * beta quantiles.
     */
    public Interval clopperPearson(double confidence) {
        double tail = (1 - Interval.requireConfidence(confidence)) / 2;
        double low = successes == 0
                ? 0
                : BetaDistribution.of(successes, trials - successes + 1).inverseCumulativeProbability(tail);
        double high = successes == trials
                ? 1
                : BetaDistribution.of(successes + 1, trials - successes).inverseSurvivalProbability(tail);
        return new Interval(low, high);
    }

    /** The score interval: covers about as often as said. Source: Wilson 1927, JASA 22, 209. */
    public Interval wilson(double confidence) {
        double z = NormalDistribution.of(0, 1)
                .inverseSurvivalProbability((1 - Interval.requireConfidence(confidence)) / 2);
        double share = estimate();
        double centre = share + z * z / (2 * trials);
        double half = z * Math.sqrt(share * (1 - share) / trials + z * z / (4.0 * trials * trials));
        double scale = 1 + z * z / trials;
        double low = successes == 0 ? 0 : (centre - half) / scale;
        double high = successes == trials ? 1 : (centre + half) / scale;
        return new Interval(low, high);
    }
}
