package org.duskline.web.page;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Trap;

/**
 * A visit as a form or a program writes it down, checked.
 *
 * @param visit the visit
 * @param mark the writer's own mark, by which a repeated sending is known
 */
record VisitEntry(Visit visit, Optional<String> mark) {
    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(10);
    private static final Pattern MARK = Pattern.compile("[A-Za-z0-9_-]{8,64}");
    private static final int LONGEST_TEXT = 2000;

    /** Where the fields come from; an empty text is no field. */
    @FunctionalInterface
    interface Fields {
        Optional<String> text(String name);
    }

    /**
     * Reads {@code what}, {@code at} or {@code agoSeconds}, {@code massKg}, {@code whereTo}, {@code note} and {@code id}.
     * A time without an offset is told by the trap's own clock; without any time it was now. How long ago it was is what
     * a phone knows that kept the visit until it had reception, whatever its clock shows.
     *
     * @param by who writes it
     * @throws BadRequest in words for the keeper
     */
    static VisitEntry read(Fields fields, Trap trap, String by, Instant now) {
        Visit visit = new Visit(
                trap.name(),
                kind(fields.text("what").orElse("")),
                time(fields, trap.zone(), now),
                by,
                fields.text("massKg").map(VisitEntry::mass).orElse(Double.NaN),
                fields.text("whereTo").map(VisitEntry::bounded),
                fields.text("note").map(VisitEntry::bounded).orElse(""));
        return new VisitEntry(visit, fields.text("id").map(VisitEntry::mark));
    }

    static VisitKind kind(String wireName) {
        return Arrays.stream(VisitKind.values())
                .filter(kind -> kind.wireName().equals(wireName))
                .findFirst()
                .orElseThrow(
                        () -> new BadRequest("\"" + wireName + "\" is nothing that is done at a trap. Choose one of "
                                + Arrays.stream(VisitKind.values())
                                        .map(VisitKind::wireName)
                                        .collect(Collectors.joining(", "))
                                + "."));
    }

    private static Instant time(Fields fields, ZoneId zone, Instant now) {
        Instant time = fields.text("at")
                .map(text -> time(text, zone))
                .orElseGet(() -> now.minus(
                        fields.text("agoSeconds").map(VisitEntry::seconds).orElse(Duration.ZERO)));
        if (time.isAfter(now.plus(CLOCKS_DIFFER))) {
            throw new BadRequest(
                    "A visit at " + Words.moment(time, now, zone) + " lies ahead. Write it down once it is done.");
        }
        return time;
    }

    private static Instant time(String text, ZoneId zone) {
        try {
            return text.matches(".*T.*(Z|[+-]\\d\\d:?\\d\\d)")
                    ? OffsetDateTime.parse(text).toInstant()
                    : LocalDateTime.parse(text).atZone(zone).toInstant();
        } catch (DateTimeException unreadable) {
            throw new BadRequest("\"" + text + "\" is no time. Write it as 2026-05-12T21:04.");
        }
    }

    private static Duration seconds(String text) {
        if (!text.matches("\\d{1,8}")) {
            throw new BadRequest("\"" + text + "\" in agoSeconds is no whole number of seconds.");
        }
        return Duration.ofSeconds(Long.parseLong(text));
    }

    private static double mass(String text) {
        String decimal = text.replace(',', '.');
        if (!decimal.matches("\\d{1,2}(\\.\\d{1,3})?") || Double.parseDouble(decimal) <= 0) {
            throw new BadRequest("\"" + text + "\" is no weight of a swarm in kg. Write it as 1.42, or leave it out.");
        }
        return Double.parseDouble(decimal);
    }

    private static String bounded(String text) {
        if (text.length() > LONGEST_TEXT) {
            throw new BadRequest(
                    "A text of " + text.length() + " characters is too long; " + LONGEST_TEXT + " fit. Shorten it.");
        }
        return text;
    }

    private static String mark(String text) {
        if (!MARK.matcher(text).matches()) {
            throw new BadRequest("The id of a visit is 8 to 64 letters, digits, hyphens or underscores.");
        }
        return text;
    }
}
