package org.duskline.analyzer.detect;

import java.util.Optional;

/** What is known about a trap's hour from elsewhere: the sun, and the other traps of the line as its control. */
public interface Surroundings {
    /** Hours since sunrise at the site, negative before it. */
    double hoursAfterSunrise(long timeMillis);

    /** Hours until sunset at the site, negative after it. */
    double hoursBeforeSunset(long timeMillis);

    /** Temperature in the shade, degrees Celsius, the line's best guess; NaN when nobody measured it lately. */
    double outsideCelsius(long timeMillis);

    /** Temperature in the shade as the scales' own thermometers have it, degrees Celsius; NaN where none is near. */
    double shadeCelsius(long timeMillis);

    /** How surely it rained on the line within the hour before, 0 to 1. */
    double rain(long timeMillis);

    /** What the other scales gained in that time, kg, median; NaN when fewer than two of them know. */
    double neighboursGainKg(long fromMillis, long toMillis);

    /** How many of the other scales were heard of in that time, and how many of them gained more than so many kilograms. */
    OtherScales otherScales(long fromMillis, long toMillis, double leastKg);

    /** Noon of the last day whose following night is over. */
    long lastWholeDaysNoon(long timeMillis);

    /** By how much this trap's box was lighter on that day than in the nights around it; empty where too few scales know. */
    Optional<DayDip> dip(long noonMillis);

    /** What this trap's box lost from the night before that noon to the night after; empty where too few scales know. */
    Optional<DayLoss> loss(long noonMillis);

    /** Dead time of a lane over the number of lanes of this trap's counter, seconds; NaN where nobody has said. */
    double counterBlindSeconds();

    /** Whether a kind of evidence is weighed; all are, but when it is measured what they buy. */
    boolean weighs(Beyond kind);

    /** Whether the keeper recorded being at this trap in that time. */
    boolean keeperWasThere(long fromMillis, long toMillis);

    /** Whether the keeper recorded within that time that no colony is left in this trap. */
    boolean keeperEmptied(long afterMillis, long toMillis);

    /** Whether the keeper recorded that the entrance is shut at that time. */
    boolean keeperShut(long timeMillis);

    /**
     * Share of the traps of the line that had scouts in the two hours before a time and have next to none in the hour up
     * to a later time; NaN when there were scouts nowhere else.
     */
    double scoutsSilenced(long fromMillis, long toMillis);
}
