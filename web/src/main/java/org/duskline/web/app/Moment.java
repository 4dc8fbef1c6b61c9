package org.duskline.web.app;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Function;

/** Reads a moment as people write it: a day, a day and a time at the trap, or an instant of RFC 3339. */
final class Moment {
    private static final List<Function<Reading, Instant>> WAYS = List.of(
            reading -> OffsetDateTime.parse(reading.text()).toInstant(),
            reading ->
                    LocalDateTime.parse(reading.text()).atZone(reading.zone()).toInstant(),
            reading ->
                    LocalDate.parse(reading.text()).atStartOfDay(reading.zone()).toInstant());

    private record Reading(String text, ZoneId zone) {}

    private Moment() {}

    /**
     * Reads a moment.
     *
     * @param zone for what is written without an offset
     */
    static Instant read(String text, ZoneId zone) {
        for (Function<Reading, Instant> way : WAYS) {
            try {
                return way.apply(new Reading(text, zone));
            } catch (DateTimeException notThisWay) {
                continue;
            }
        }
        throw Failure.askedWrongly(
                "\"" + text + "\" is no moment. Write a day (2026-05-12), a day and a time at the trap"
                        + " (2026-05-12T13:00), or an instant with its offset (2026-05-12T13:00:00Z).");
    }
}
