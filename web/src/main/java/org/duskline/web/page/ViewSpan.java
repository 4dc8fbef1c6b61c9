package org.duskline.web.page;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Which stretch of a curve is looked at: either a fixed one, which a link reopens as it was, or one that goes along
 * with the time.
 *
 * @param from first instant
 * @param until first instant after it
 * @param following the choice that goes along with the time; empty for a fixed stretch
 */
public record ViewSpan(Instant from, Instant until, Optional<Choice> following) {
    private static final Duration LONGEST = Duration.ofDays(800);
    private static final Duration SHORTEST = Duration.ofMinutes(10);

    /** The stretches offered by a button. */
    public enum Choice {
        HOURS("6h", "6 h", Duration.ofHours(6)),
        DAY("day", "Day", Duration.ofHours(24)),
        DAYS("3days", "3 days", Duration.ofDays(3)),
        WEEK("week", "Week", Duration.ofDays(7)),
        SEASON("season", "Season", Duration.ofDays(150));

        private final String key;
        private final String label;
        private final Duration length;

        Choice(String key, String label, Duration length) {
            this.key = key;
            this.label = label;
            this.length = length;
        }

        public String key() {
            return key;
        }

        public String label() {
            return label;
        }

        public Duration length() {
            return length;
        }
    }

    /**
     * Reads the stretch from an address.
     *
     * @param from RFC 3339 time or null
     * @param until RFC 3339 time or null
     * @param span key of a choice or null
     * @param recordedFrom the trap's first sample, where a season begins
     * @throws BadRequest when they make no sense together
     */
    static ViewSpan read(String from, String until, String span, Optional<Instant> recordedFrom, Instant now) {
        if (from == null && until == null) {
            return following(choice(span == null ? Choice.DAY.key() : span), recordedFrom, now);
        }
        if (from == null || until == null) {
            throw new BadRequest("A view needs both its begin and its end. Give from= and until=, or neither.");
        }
        Instant begin = time("from", from);
        Instant end = time("until", until);
        if (Duration.between(begin, end).compareTo(SHORTEST) < 0) {
            throw new BadRequest("The view from " + begin + " until " + end + " is shorter than " + SHORTEST.toMinutes()
                    + " minutes. Choose a later until.");
        }
        if (Duration.between(begin, end).compareTo(LONGEST) > 0) {
            throw new BadRequest("The view from " + begin + " until " + end + " is longer than " + LONGEST.toDays()
                    + " days. Look at one season at a time.");
        }
        return new ViewSpan(begin, end, Optional.empty());
    }

    private static ViewSpan following(Choice choice, Optional<Instant> recordedFrom, Instant now) {
        Instant from = now.minus(choice.length());
        if (choice == Choice.SEASON && recordedFrom.isPresent()) {
            Instant longest = now.minus(LONGEST);
            from = recordedFrom.get().isBefore(longest) ? longest : recordedFrom.get();
            from = Duration.between(from, now).compareTo(Choice.DAY.length()) < 0
                    ? now.minus(Choice.DAY.length())
                    : from;
        }
        return new ViewSpan(from, now, Optional.of(choice));
    }

    private static Choice choice(String key) {
        return Arrays.stream(Choice.values())
                .filter(choice -> choice.key.equals(key))
                .findFirst()
                .orElseThrow(() -> new BadRequest("There is no span \"" + key + "\". Choose one of "
                        + Arrays.stream(Choice.values()).map(Choice::key).collect(Collectors.joining(", ")) + "."));
    }

    static Instant time(String parameter, String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeException notATime) {
            throw new BadRequest("\"" + text + "\" in " + parameter
                    + "= is not a time. Write it like 2026-05-12T13:04:00Z (RFC 3339).");
        }
    }
}
