package org.duskline.analyzer.season;

/**
 * What a place's weather tends to. Invented laws that give spring and summer days as a keeper knows them.
 *
 * @param yearMeanCelsius mean over the year
 * @param yearSwingCelsius half the difference between the warmest and the coldest month
 * @param daySwingCelsius half the difference between a clear day and its night
 * @param frontsPerDay long rains a day
 * @param showersPerDay short rains a day
 * @param windMetresPerSecond median wind
 * @param cloudiness shift of the cloud cover, in logits
 * @param dewGapCelsius how far the dew point usually lies below the day's mean
 */
record Climate(
        double yearMeanCelsius,
        double yearSwingCelsius,
        double daySwingCelsius,
        double frontsPerDay,
        double showersPerDay,
        double windMetresPerSecond,
        double cloudiness,
        double dewGapCelsius) {

    static Climate draw(Dice dice, double latitude) {
        double poleward = Math.abs(latitude) - 35;
        return new Climate(
                dice.gauss(16 - 0.42 * poleward, 1.2),
                8 + 0.16 * poleward + dice.uniform(-1, 2),
                dice.uniform(3.5, 8),
                dice.lognormal(0.22, 0.4, 0.07, 0.5),
                dice.lognormal(0.25, 0.5, 0.05, 0.9),
                dice.lognormal(1.9, 0.35, 0.8, 4),
                dice.uniform(-0.9, 0.5),
                dice.uniform(2, 9));
    }
}
