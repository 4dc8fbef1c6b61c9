package org.duskline.web.page;

import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.replay.Comparison.Change;
import org.duskline.analyzer.replay.Comparison.Event;
import org.duskline.analyzer.replay.Comparison.Truth;
import org.duskline.analyzer.replay.Expectation;
import org.duskline.analyzer.replay.Told;
import org.duskline.web.tuning.Outcome;

/** What tuning says in the keeper's words. */
public final class TuningWords {
    private TuningWords() {}

    /** How it is told as things are. */
    public static String now(Event event) {
        return told(event.now());
    }

    /** How it would be told. */
    public static String then(Event event) {
        String words = told(event.then());
        return switch (event.change()) {
            case LATER -> words + ", " + minutes(event.shift()) + " later";
            case EARLIER -> words + ", " + minutes(event.shift().negated()) + " sooner";
            default -> words;
        };
    }

    private static String told(Optional<Told> told) {
        return told.map(one -> "told after " + minutes(one.delay())).orElse("not told");
    }

    private static String minutes(Duration duration) {
        long minutes = Math.max(1, Math.round(duration.toSeconds() / 60.0));
        return minutes < 120 ? minutes + " min" : Math.round(minutes / 60.0) + " h";
    }

    public static String truth(Event event) {
        return switch (event.truth()) {
            case SWARM -> "a swarm";
            case FALSE -> "a false alarm";
            case UNANSWERED -> event.withdrawn() ? "taken back by itself" : "not answered";
        };
    }

    /** For the style of a row: what matters most about it. */
    public static String mark(Event event) {
        if (event.change() == Change.LOST) {
            return Outcome.isFalse(event) ? "gone" : "missed";
        }
        if (event.change() == Change.GAINED) {
            return event.truth() == Truth.SWARM ? "gone" : "more";
        }
        return event.change().name().toLowerCase(Locale.ROOT);
    }

    /** How many of a kind are told now and would be told. */
    public static String counts(Outcome outcome, Kind kind) {
        List<Event> events = outcome.comparison().of(kind);
        long now = events.stream().filter(event -> event.now().isPresent()).count();
        long then = events.stream().filter(event -> event.then().isPresent()).count();
        return then + (now == then ? ", as now" : ", now " + now);
    }

    /** False alarms to expect, with how sure that is. */
    public static String expected(Expectation expectation) {
        return expectation.quietDays() == 0
                ? "unknown"
                : String.format(
                        Locale.ROOT,
                        "%.2f (between %.2f and %.2f)",
                        expectation.perSeason(),
                        expectation.interval().low(),
                        expectation.interval().high());
    }

    public static String delay(Expectation expectation) {
        return expectation.medianDelay().isZero() ? "–" : minutes(expectation.medianDelay());
    }
}
