package org.duskline.analyzer.sky;

import java.time.Duration;
import java.time.ZonedDateTime;
import org.shredzone.commons.suncalc.SunTimes;

/** The two heights of the sun's centre that matter, and the search for when it passes them. */
final class Heights {
    /** Sunrise and sunset by convention of the almanacs: 34' of refraction and 16' of half the sun's disc. */
    static final double HORIZON_DEGREES = -50.0 / 60;

    static final double CIVIL_DEGREES = -6;

    private Heights() {}

    static SunTimes passages(
            double latitude, double longitude, ZonedDateTime from, Duration within, double heightDegrees) {
        return SunTimes.compute()
                .at(latitude, longitude)
                .on(from)
                .limit(within)
                .twilight(heightDegrees)
                .execute();
    }
}
