package org.duskline.analyzer.prove;

import java.time.Duration;
import java.time.Instant;
import org.duskline.analyzer.season.TrapTruth;
import org.shredzone.commons.suncalc.SunTimes;

/** Whether an arrival was told in time to be closed the same evening. */
final class Evening {
    private static final double LAST_HOUR = 17.5;
    private static final double AFTER_SUNSET = 1800;

    private Evening() {}

    /** Null for arrivals that ended too late in the day or were not heard by dusk. */
    static Boolean told(TrapTruth trap, TrapTruth.Arrival arrival, double raised) {
        if (solarHour(arrival.end(), trap.lon()) >= LAST_HOUR) {
            return null;
        }
        double dusk = sunset(arrival.end(), trap) + AFTER_SUNSET;
        if (Double.isNaN(arrival.heardHalf()) || arrival.heardHalf() > dusk) {
            return null;
        }
        return raised <= dusk;
    }

    private static double sunset(double second, TrapTruth trap) {
        SunTimes times = SunTimes.compute()
                .on(Instant.ofEpochMilli((long) (second * 1000)))
                .at(trap.lat(), trap.lon())
                .limit(Duration.ofHours(20))
                .execute();
        return times.getSet() == null ? second + 20 * 3600 : times.getSet().toEpochSecond();
    }

    /** Local solar hour; equation of time by the short series of NOAA's solar equations. */
    static double solarHour(double second, double longitude) {
        double year = 365.2425;
        double g = 2 * Math.PI * ((second / 86400) % year - 0.5) / year;
        double equation = 229.18
                * (0.000075
                        + 0.001868 * Math.cos(g)
                        - 0.032077 * Math.sin(g)
                        - 0.014615 * Math.cos(2 * g)
                        - 0.040849 * Math.sin(2 * g));
        double minutes = (second % 86400) / 60 + equation + 4 * longitude;
        return ((minutes % 1440) + 1440) % 1440 / 60;
    }
}
