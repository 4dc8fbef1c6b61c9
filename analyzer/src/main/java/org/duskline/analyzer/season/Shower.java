package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * One rain over the line.
 *
 * @param start Unix seconds
 * @param end Unix seconds
 * @param peak mm/h in its middle
 */
record Shower(double start, double end, double peak) implements Spell {
    private static final double HOUR = 3600;

    static List<Shower> draw(World world, Dice dice, double storminess) {
        List<Shower> showers = new ArrayList<>();
        double often = Math.pow(storminess, 0.3);
        for (double day = world.startSecond() - 86400; day < world.endSecond(); day += 86400) {
            for (int i = dice.poisson(world.climate().frontsPerDay() * often); i > 0; i--) {
                double start = day + dice.uniform(0, 86400);
                double peak = dice.lognormal(1.6, 0.7, 0.3, 8);
                showers.add(new Shower(start, start + dice.lognormal(4 * HOUR, 0.6, HOUR, 14 * HOUR), peak));
            }
            for (int i = dice.poisson(world.climate().showersPerDay() * often); i > 0; i--) {
                // Showers favour the afternoon: its solar hour is turned back into clock seconds.
                double hour = (dice.gauss(15.5, 3) - world.longitude() / 15 + 48) % 24;
                double start = day - (day % 86400) + hour * HOUR;
                double peak = dice.lognormal(6, 0.7, 1, 45) * Math.pow(storminess, 0.2);
                showers.add(new Shower(start, start + dice.lognormal(0.5 * HOUR, 0.5, 600, 1.5 * HOUR), peak));
            }
        }
        showers.sort(Comparator.comparingDouble(Shower::start));
        return List.copyOf(showers);
    }

    double at(double t) {
        if (!covers(t)) {
            return 0;
        }
        double share = (t - start) / (end - start);
        return peak * Math.min(1, 5 * Math.min(share, 1 - share));
    }

    double millimetres() {
        return peak * 0.8 * (end - start) / HOUR;
    }

    /** Index of the last shower that began by then, or -1. */
    static int lastBefore(List<Shower> showers, double t) {
        int low = 0;
        int high = showers.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (showers.get(middle).start() <= t) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low - 1;
    }
}
