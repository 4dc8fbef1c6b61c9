package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.duskline.web.page.board.Night;

/** Places instants on a drawing that runs from left to right, in per cent of its width. */
final class TimeScale {
    private final Instant from;
    private final Instant until;

    TimeScale(Instant from, Instant until) {
        this.from = from;
        this.until = until;
    }

    double percent(Instant time) {
        double share = Duration.between(from, time).toMillis()
                / (double) Duration.between(from, until).toMillis();
        return Math.max(0, Math.min(100, share * 100));
    }

    boolean covers(Instant time) {
        return !time.isBefore(from) && time.isBefore(until);
    }

    /** A place on the drawing, as an SVG length. */
    String at(Instant time) {
        return text(percent(time));
    }

    List<Shade> shades(List<Night> nights) {
        return nights.stream()
                .map(night ->
                        new Shade(at(night.dusk()), text(Math.max(0, percent(night.dawn()) - percent(night.dusk())))))
                .toList();
    }

    /** Ticks on the site's full hours, every so many. */
    List<Tick> ticks(int everyHours, ZoneId zone) {
        List<Tick> ticks = new ArrayList<>();
        ZonedDateTime hour = from.atZone(zone).truncatedTo(ChronoUnit.HOURS).plusHours(1);
        while (hour.toInstant().isBefore(until)) {
            if (hour.getHour() % everyHours == 0) {
                ticks.add(new Tick(at(hour.toInstant()), String.format(Locale.ROOT, "%02d", hour.getHour())));
            }
            hour = hour.plusHours(1);
        }
        return ticks;
    }

    static String text(double percent) {
        return String.format(Locale.ROOT, "%.3f%%", percent);
    }
}
