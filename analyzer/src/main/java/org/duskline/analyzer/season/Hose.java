package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.List;

/** Garden water on a box: kilograms within minutes on clear afternoons, when swarms move in too. Rates are invented. */
final class Hose {
    private static final double DAY = 86_400;
    private static final double CLEAR = 0.55;

    private Hose() {}

    static List<Script.Sprinkler> draw(World world, Weather weather, Dice dice) {
        List<Script.Sprinkler> waterings = new ArrayList<>();
        double midnight = world.startSecond() - world.solarHour(world.startSecond()) * 3600;
        for (double day = midnight + DAY; day < world.endSecond(); day += DAY) {
            double start = day + dice.uniform(14, 18) * 3600;
            boolean watered = dice.chance(0.3);
            double minutes = dice.uniform(8, 18);
            double kg = dice.uniform(0.3, 0.5);
            if (watered && weather.cloud(start) < CLEAR) {
                waterings.add(new Script.Sprinkler(start, minutes, kg));
            }
        }
        return waterings;
    }
}
