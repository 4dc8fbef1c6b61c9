package org.duskline.analyzer.sky;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.shredzone.commons.suncalc.SunTimes;

/**
 * The sun over one calendar day of a place, from local midnight to local midnight, however many hours that is.
 *
 * @param date the local date
 * @param zone the place's time zone
 * @param noon when the sun stands highest; where it does so just before and just after the local day, the later of both
 * @param sun sunrise and sunset: the centre 50' below the horizon, as in almanacs
 * @param twilight civil dawn and dusk: the centre 6 degrees below the horizon
 */
public record SunDay(LocalDate date, ZoneId zone, Instant noon, Course sun, Course twilight) {
    private static final Duration HALF_A_DAY = Duration.ofHours(12);

    /**
     * The day at a place.
     *
     * @param latitude degrees north
     * @param longitude degrees east
     */
    public static SunDay at(double latitude, double longitude, LocalDate date, ZoneId zone) {
        ZonedDateTime start = date.atStartOfDay(zone);
        Duration length = Duration.between(start, date.plusDays(1).atStartOfDay(zone));
        SunTimes visual = Heights.passages(latitude, longitude, start, length, Heights.HORIZON_DEGREES);
        SunTimes civil = Heights.passages(latitude, longitude, start, length, Heights.CIVIL_DEGREES);
        Instant noon = instant(visual.getNoon())
                .orElseGet(() -> Heights.passages(
                                latitude, longitude, start.plus(HALF_A_DAY), length, Heights.HORIZON_DEGREES)
                        .getNoon()
                        .toInstant());
        return new SunDay(date, zone, noon, course(visual), course(civil));
    }

    private static Course course(SunTimes times) {
        if (times.isAlwaysUp()) {
            return new Course.StaysAbove();
        }
        if (times.isAlwaysDown()) {
            return new Course.StaysBelow();
        }
        return new Course.Crosses(instant(times.getRise()), instant(times.getSet()));
    }

    private static Optional<Instant> instant(ZonedDateTime time) {
        return Optional.ofNullable(time).map(ZonedDateTime::toInstant);
    }
}
