package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.List;

/** Sun in the photo gates: bees that are not there, at the same hour of each clear day (P). Rates are invented. */
final class Glares {
    private Glares() {}

    static List<TrapTruth.Glare> draw(World world, Weather weather, Dice dice, Level level) {
        List<TrapTruth.Glare> spells = new ArrayList<>();
        if (!dice.chance(Math.min(0.7, 0.35 * level.nuisances()))) {
            return spells;
        }
        double hour = dice.chance(0.5) ? dice.uniform(6, 10) : dice.uniform(15.5, 20);
        double from = dice.uniform(world.startSecond() - 20 * 86400, world.endSecond() - 5 * 86400);
        double until = from + dice.lognormal(20, 0.6, 4, 90) * 86400;
        double strength = dice.lognormal(9, 0.9, 1.5, 60);
        double width = dice.lognormal(1800, 0.5, 500, 5400);
        String way = dice.pick(List.of("both", "both", "in", "out"));
        double midnight = from - world.solarHour(from) * 3600;
        for (double day = midnight; day < until; day += 86400) {
            double start = day + hour * 3600 + dice.gauss(0, 180);
            boolean clear = weather.sunshine(start + width / 2) > 0.12 && weather.cloud(start + width / 2) < 0.55;
            if (clear && start > world.startSecond() && start + width < world.endSecond()) {
                spells.add(new TrapTruth.Glare(start, start + width, strength * dice.lognormal(1, 0.3, 0.4, 2.5), way));
            }
        }
        return spells;
    }

    static void add(TrapTruth.Glare glare, double t, Weather weather, Flow flow) {
        double share = (t - glare.start()) / (glare.end() - glare.start());
        double beam = Math.min(1, 6 * Math.min(share, 1 - share)) * Math.max(0.1, 1 - 1.6 * weather.cloud(t));
        double rate = glare.countsPerMin() * beam;
        switch (glare.way()) {
            case "in" -> flow.add(rate, 0);
            case "out" -> flow.add(0, rate);
            default -> flow.add(rate / 2, rate / 2);
        }
    }
}
