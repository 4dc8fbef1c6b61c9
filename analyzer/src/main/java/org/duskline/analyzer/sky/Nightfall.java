package org.duskline.analyzer.sky;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import org.shredzone.commons.suncalc.SunTimes;

/**
 * How the light goes after the noon of a local date, until it comes back. Far north a dusk may fall after midnight; it
 * still belongs to the evening of the date before.
 */
public sealed interface Nightfall {
    /** Far enough to find the next sunrise from anywhere. */
    Duration A_YEAR = Duration.ofDays(365);

    /** The ordinary case: the sun sets, it gets dark, and light again. */
    record Dark(Instant sunset, Instant dusk, Instant dawn, Instant sunrise) implements Nightfall {}

    /** The sun sets, yet civil twilight lasts until it rises, as in June at 60 to 66 degrees north. */
    record Bright(Instant sunset, Instant lowest, Instant sunrise) implements Nightfall {}

    /** The sun does not set. */
    record Sunlit(Instant lowest) implements Nightfall {}

    /** The sun did not rise on this date. */
    record Sunless(Instant noon) implements Nightfall {}

    /**
     * The nightfall at a place.
     *
     * @param latitude degrees north
     * @param longitude degrees east
     * @param date the local date whose evening it is
     * @param zone the place's time zone
     */
    static Nightfall at(double latitude, double longitude, LocalDate date, ZoneId zone) {
        Instant noon = SunDay.at(latitude, longitude, date, zone).noon();
        Instant nextNoon =
                SunDay.at(latitude, longitude, date.plusDays(1), zone).noon();
        SunTimes visual = after(latitude, longitude, noon.atZone(zone), Heights.HORIZON_DEGREES);
        Instant lowest = visual.getNadir().toInstant();
        if (visual.isAlwaysUp() || notBefore(visual.getSet(), nextNoon)) {
            return sunIsUp(latitude, longitude, noon.atZone(zone)) ? new Sunlit(lowest) : new Sunless(noon);
        }
        if (visual.isAlwaysDown()
                || (visual.getRise() != null && visual.getRise().isBefore(visual.getSet()))) {
            return new Sunless(noon);
        }
        Instant sunset = visual.getSet().toInstant();
        Instant sunrise = visual.getRise().toInstant();
        SunTimes civil = after(latitude, longitude, noon.atZone(zone), Heights.CIVIL_DEGREES);
        if (civil.getSet() == null || !civil.getSet().toInstant().isBefore(sunrise)) {
            return new Bright(sunset, lowest, sunrise);
        }
        return new Dark(sunset, civil.getSet().toInstant(), civil.getRise().toInstant(), sunrise);
    }

    private static boolean notBefore(ZonedDateTime time, Instant limit) {
        return time == null || !time.toInstant().isBefore(limit);
    }

    private static boolean sunIsUp(double latitude, double longitude, ZonedDateTime noon) {
        return !Heights.passages(latitude, longitude, noon.minusHours(1), Duration.ofHours(2), Heights.HORIZON_DEGREES)
                .isAlwaysDown();
    }

    private static SunTimes after(double latitude, double longitude, ZonedDateTime noon, double heightDegrees) {
        return Heights.passages(latitude, longitude, noon, A_YEAR, heightDegrees);
    }
}
