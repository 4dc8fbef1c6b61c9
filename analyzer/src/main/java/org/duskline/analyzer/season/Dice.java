package org.duskline.analyzer.season;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Seeded chance. A fork depends on the seed and its name alone, never on what was drawn before, so that one cause can
 * change without changing the others.
 */
final class Dice {
    private static final double NORMAL_ABOVE = 14;

    private final long seed;
    private final SplittableRandom random;

    Dice(long seed) {
        this.seed = seed;
        this.random = new SplittableRandom(seed);
    }

    Dice fork(String cause) {
        long mixed = seed * 0x9E3779B97F4A7C15L + cause.hashCode() * 0xBF58476D1CE4E5B9L;
        return new Dice(mixed ^ (mixed >>> 31));
    }

    double uniform(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    double gauss() {
        return random.nextGaussian();
    }

    double gauss(double mean, double deviation) {
        return mean + deviation * random.nextGaussian();
    }

    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    /** A whole number from low to high, both possible. */
    int whole(int low, int high) {
        return random.nextInt(low, high + 1);
    }

    double exponential(double mean) {
        return -mean * Math.log1p(-random.nextDouble());
    }

    double lognormal(double median, double sigma, double low, double high) {
        return Math.max(low, Math.min(high, median * Math.exp(sigma * random.nextGaussian())));
    }

    /** Knuth's product for small means, the normal law beyond. */
    int poisson(double mean) {
        if (mean <= 0) {
            return 0;
        }
        if (mean > NORMAL_ABOVE) {
            return (int) Math.max(0, Math.round(gauss(mean, Math.sqrt(mean))));
        }
        double limit = Math.exp(-mean);
        double product = random.nextDouble();
        int count = 0;
        while (product > limit) {
            product *= random.nextDouble();
            count++;
        }
        return count;
    }

    <T> T pick(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    /** Moments of a steady chance, in order. */
    double[] moments(double from, double until, double perDay) {
        double[] moments = new double[poisson(Math.max(0, until - from) / 86400 * perDay)];
        for (int i = 0; i < moments.length; i++) {
            moments[i] = uniform(from, until);
        }
        Arrays.sort(moments);
        return moments;
    }

    byte[] bytes(int length) {
        byte[] bytes = new byte[length];
        random.nextBytes(bytes);
        return bytes;
    }
}
