package org.duskline.analyzer.watch;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import org.duskline.analyzer.sky.Course;
import org.duskline.analyzer.sky.SunDay;
import org.duskline.collector.trap.Trap;

/** Sunrise and sunset at a trap, remembered by day since a season asks for the same few hundred times. */
final class Daylight {
    private static final double HOUR_MILLIS = 3_600_000.0;

    private final Trap trap;
    private final Map<LocalDate, long[]> days = new HashMap<>();
    private long dayStart;
    private long dayEnd;
    private long[] day = new long[2];

    Daylight(Trap trap) {
        this.trap = trap;
    }

    double hoursAfterSunrise(long timeMillis) {
        return (timeMillis - sun(timeMillis)[0]) / HOUR_MILLIS;
    }

    double hoursBeforeSunset(long timeMillis) {
        return (sun(timeMillis)[1] - timeMillis) / HOUR_MILLIS;
    }

    /** The sun's noon of the trap's day at a time. */
    long noon(long timeMillis) {
        long[] day = sun(timeMillis);
        return (day[0] + day[1]) / 2;
    }

    private long[] sun(long timeMillis) {
        if (timeMillis < dayStart || timeMillis >= dayEnd) {
            LocalDate date =
                    Instant.ofEpochMilli(timeMillis).atZone(trap.zone()).toLocalDate();
            dayStart = date.atStartOfDay(trap.zone()).toInstant().toEpochMilli();
            dayEnd = date.plusDays(1).atStartOfDay(trap.zone()).toInstant().toEpochMilli();
            day = days.computeIfAbsent(date, this::compute);
        }
        return day;
    }

    private long[] compute(LocalDate date) {
        SunDay sunDay = SunDay.at(trap.latitude(), trap.longitude(), date, trap.zone());
        long noon = sunDay.noon().toEpochMilli();
        long half = (long) (12 * HOUR_MILLIS);
        Course course = sunDay.sun();
        if (course instanceof Course.Crosses crosses) {
            return new long[] {
                crosses.up().map(Instant::toEpochMilli).filter(up -> up < noon).orElse(noon - half),
                crosses.down()
                        .map(Instant::toEpochMilli)
                        .filter(down -> down > noon)
                        .orElse(noon + half)
            };
        }
        return course instanceof Course.StaysAbove ? new long[] {noon - half, noon + half} : new long[] {noon, noon};
    }
}
