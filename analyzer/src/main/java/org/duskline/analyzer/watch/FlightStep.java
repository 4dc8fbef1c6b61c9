package org.duskline.analyzer.watch;

import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.series.TrapSeries;

/**
 * What passed between two samples, and whether a colony of any size would have flown then.
 *
 * @param hours from the sample before
 * @param perMinute crossings a minute, both ways
 * @param fit whether it was warm mid-day and the samples close enough to tell
 */
record FlightStep(double hours, double perMinute, boolean fit) {
    private static final double HOUR_MILLIS = 3_600_000;

    /** Brisk flight begins there (common practice). */
    private static final double BRISK_CELSIUS = 15;

    static FlightStep at(TrapSeries series, int at, Surroundings surroundings) {
        if (at == 0) {
            return new FlightStep(0, 0, false);
        }
        long now = series.timeMillis(at);
        double hours = (now - series.timeMillis(at - 1)) / HOUR_MILLIS;
        double bees = series.totalIn(at) + series.totalOut(at) - series.totalIn(at - 1) - series.totalOut(at - 1);
        boolean fit = surroundings.hoursAfterSunrise(now) > 3
                && surroundings.hoursBeforeSunset(now) > 2
                && !(surroundings.outsideCelsius(now) < BRISK_CELSIUS)
                && hours < 1;
        return new FlightStep(hours, bees / (hours * 60), fit);
    }
}
