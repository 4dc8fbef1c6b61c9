package org.duskline.analyzer.stats;

import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.inference.BinomialTest;

/**
 * Events over an exposure (alarms over trap-days, swarms over weeks), with exact intervals.
 *
 * @param events at least 0
 * @param exposure in the unit that the rate is per, above 0
 */
public record PoissonRate(int events, double exposure) {
    public PoissonRate {
        if (events < 0 || !(exposure > 0)) {
            throw new IllegalArgumentException(events + " events over " + exposure + " is no rate.");
        }
    }

    public double estimate() {
        return events / exposure;
    }

    /** The exact interval of the rate. Source: Garwood 1936, Biometrika 28, 437, by gamma quantiles. */
    public Interval exact(double confidence) {
        double tail = (1 - Interval.requireConfidence(confidence)) / 2;
        double low = events == 0 ? 0 : GammaDistribution.of(events, 1).inverseCumulativeProbability(tail);
        double high = GammaDistribution.of(events + 1.0, 1).inverseSurvivalProbability(tail);
        return new Interval(low / exposure, high / exposure);
    }

    /** This rate over the other; infinite or NaN where the other has no event. */
    public double ratioTo(PoissonRate other) {
        return estimate() / other.estimate();
    }

    /**
     * The exact interval of this rate over the other: given the sum, this one's events are binomial (Przyborowski and
     * Wilenski 1940, Biometrika 31, 313).
     */
    public Interval ratioInterval(PoissonRate other, double confidence) {
        int together = events + other.events;
        if (together == 0) {
            Interval.requireConfidence(confidence);
            return new Interval(0, Double.POSITIVE_INFINITY);
        }
        Interval share = new Proportion(events, together).clopperPearson(confidence);
        double scale = other.exposure / exposure;
        return new Interval(odds(share.low()) * scale, odds(share.high()) * scale);
    }

    /** Two-sided exact p-value for equal rates; 1 where neither has an event. */
    public double equalityPValue(PoissonRate other) {
        int together = events + other.events;
        if (together == 0) {
            return 1;
        }
        double share = exposure / (exposure + other.exposure);
        return BinomialTest.withDefaults().test(together, events, share).getPValue();
    }

    private static double odds(double share) {
        return share >= 1 ? Double.POSITIVE_INFINITY : share / (1 - share);
    }
}
