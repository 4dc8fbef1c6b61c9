package org.duskline.web.page;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.visit.Said;

/**
 * An answer as a form or a program writes it down, checked.
 *
 * @param mark the writer's own mark, by which a repeated sending is known
 * @param said how far they are with it, what it really was, or both in this order
 * @param note their own words; may be empty
 * @param at when they said so
 */
record AnswerEntry(String mark, List<Said> said, String note, Instant at) {
    private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(10);
    private static final int LONGEST_NOTE = 2000;

    AnswerEntry {
        said = List.copyOf(said);
    }

    /** Where the fields come from; an empty text is no field. */
    @FunctionalInterface
    interface Fields {
        Optional<String> text(String name);
    }

    /**
     * Reads {@code id}, {@code answer}, {@code what}, {@code note}, and {@code at} or {@code agoSeconds}. Without a time it was
     * said now. How long ago it was is what a phone knows that kept the answer until it had reception, whatever its clock
     * shows.
     *
     * @throws BadRequest in words for the keeper
     */
    static AnswerEntry read(Fields fields, Kind kind, Instant now) {
        List<Said> said = new ArrayList<>();
        fields.text("answer")
                .map(text -> one(text, AnswerChoices.progress(kind)))
                .ifPresent(said::add);
        fields.text("what").map(text -> one(text, AnswerChoices.verdicts(kind))).ifPresent(said::add);
        if (said.isEmpty()) {
            throw new BadRequest("Nothing was chosen. Say how far you are with it, or what it really was.");
        }
        return new AnswerEntry(
                fields.text("id")
                        .map(AnswerEntry::mark)
                        .orElseThrow(() -> new BadRequest("The answer has no id. Reload the page and send it again.")),
                said,
                fields.text("note").map(AnswerEntry::note).orElse(""),
                time(fields, now));
    }

    private static Said one(String text, List<Said> choices) {
        return choices.stream()
                .filter(said -> said.wireName().equals(text))
                .findFirst()
                .orElseThrow(() -> new BadRequest("\"" + text + "\" is no answer to this. Choose one of "
                        + choices.stream().map(Said::wireName).collect(Collectors.joining(", ")) + "."));
    }

    private static Instant time(Fields fields, Instant now) {
        Instant time = fields.text("at")
                .map(AnswerEntry::time)
                .orElseGet(() -> now.minus(
                        fields.text("agoSeconds").map(AnswerEntry::seconds).orElse(Duration.ZERO)));
        if (time.isAfter(now.plus(CLOCKS_DIFFER))) {
            throw new BadRequest("An answer given at " + time + " lies ahead. Check the clock of whatever sent it.");
        }
        return time.isAfter(now) ? now : time;
    }

    private static Instant time(String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeException unreadable) {
            throw new BadRequest("\"" + text + "\" is no time. Write it as 2026-05-12T19:04:00Z.");
        }
    }

    private static Duration seconds(String text) {
        if (!text.matches("\\d{1,8}")) {
            throw new BadRequest("\"" + text + "\" in agoSeconds is no whole number of seconds.");
        }
        return Duration.ofSeconds(Long.parseLong(text));
    }

    private static String note(String text) {
        if (text.length() > LONGEST_NOTE) {
            throw new BadRequest(
                    "A note of " + text.length() + " characters is too long; " + LONGEST_NOTE + " fit. Shorten it.");
        }
        return text;
    }

    private static String mark(String text) {
        if (!text.matches("[A-Za-z0-9_-]{8,64}")) {
            throw new BadRequest("The id of an answer is 8 to 64 letters, digits, hyphens or underscores.");
        }
        return text;
    }
}
