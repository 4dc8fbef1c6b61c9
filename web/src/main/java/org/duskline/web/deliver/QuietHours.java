package org.duskline.web.deliver;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/**
 * The hours in which only what cannot wait is told, by the person's own clock. They may pass midnight.
 *
 * @param from when they begin
 * @param until when they end
 */
public record QuietHours(LocalTime from, LocalTime until) {
    public QuietHours {
        if (from.equals(until)) {
            throw new IllegalArgumentException("Quiet hours from " + from + " to the same time would never end.");
        }
    }

    /** The first moment, not before the given one, at which it is not quiet. */
    Instant nextLoud(Instant time, ZoneId zone) {
        ZonedDateTime local = time.atZone(zone);
        LocalTime clock = local.toLocalTime();
        boolean afterStart = !clock.isBefore(from);
        boolean beforeEnd = clock.isBefore(until);
        boolean overMidnight = from.isAfter(until);
        boolean quiet = overMidnight ? afterStart || beforeEnd : afterStart && beforeEnd;
        if (!quiet) {
            return time;
        }
        int days = overMidnight && afterStart ? 1 : 0;
        return local.toLocalDate().plusDays(days).atTime(until).atZone(zone).toInstant();
    }
}
