package org.duskline.collector.store;

import java.time.Instant;

/** Instants as the tables hold them: Unix ms, with the smallest and the largest number for an open end. */
final class Times {
    private Times() {}

    static long millis(Instant instant) {
        if (instant.equals(Instant.MAX)) {
            return Long.MAX_VALUE;
        }
        return instant.equals(Instant.MIN) ? Long.MIN_VALUE : instant.toEpochMilli();
    }

    static Instant instant(long millis) {
        if (millis == Long.MAX_VALUE) {
            return Instant.MAX;
        }
        return millis == Long.MIN_VALUE ? Instant.MIN : Instant.ofEpochMilli(millis);
    }
}
