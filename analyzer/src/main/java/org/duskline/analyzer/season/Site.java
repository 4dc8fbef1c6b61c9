package org.duskline.analyzer.season;

import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;

/**
 * One trap's own circumstances. Shares and factors are invented.
 *
 * @param trap name and place
 * @param fitted what it is fitted with
 * @param rainShare of the line's rain that falls on it
 * @param rainLate seconds that weather comes later here
 * @param sunOnCell how far the sun can warm the load cell above the air, degrees
 * @param sunHour solar hour at which the sun falls on it
 * @param windShake grams of shake at 5 m/s: 50 to 300 in a gale (P)
 * @param boxKg empty box as the scale reads it; zero where the keeper tared it
 * @param woodKg dry wood in it
 * @param attraction factor on swarms and scouts
 * @param oldComb whether it holds comb, which draws robbers and scouts alike (R4, R7)
 * @param apiaryNear whether other bees play nearby
 */
record Site(
        Trap trap,
        Fitted fitted,
        double rainShare,
        double rainLate,
        double sunOnCell,
        double sunHour,
        double windShake,
        double boxKg,
        double woodKg,
        double attraction,
        boolean oldComb,
        boolean apiaryNear) {

    static Site draw(Dice dice, Trap trap, Fitted fitted, Level level) {
        double wood = dice.uniform(2, 8);
        boolean tared = dice.chance(0.35);
        return new Site(
                trap,
                fitted,
                dice.uniform(0.6, 1.25),
                dice.gauss(0, 240),
                dice.chance(0.6) ? dice.uniform(0.5, 4) : dice.uniform(4, 13),
                dice.uniform(8, 18),
                dice.lognormal(14, 0.6, 3, 70) * Math.sqrt(level.nuisances()),
                tared ? dice.gauss(0, 0.1) : wood + dice.uniform(0.8, 3.5),
                wood,
                dice.lognormal(1, 0.4, 0.4, 2.2),
                dice.chance(0.4),
                dice.chance(0.35));
    }

    /** The same with or without old comb, and with no apiary near. */
    Site holding(boolean comb) {
        return new Site(
                trap,
                fitted,
                rainShare,
                rainLate,
                sunOnCell,
                sunHour,
                windShake,
                boxKg,
                woodKg,
                attraction,
                comb,
                false);
    }
}
