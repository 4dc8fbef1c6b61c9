package org.duskline.web.tuning;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.replay.Comparison;
import org.duskline.analyzer.replay.Comparison.Change;
import org.duskline.analyzer.replay.Comparison.Event;
import org.duskline.analyzer.replay.Comparison.Truth;
import org.duskline.analyzer.replay.Expectation;

/**
 * What other thresholds would have told.
 *
 * @param wish what was tried
 * @param comparison against what holds now
 * @param was what to expect as it is
 * @param willBe what to expect under the others
 * @param whole whether everything recorded was run; otherwise a first stretch
 * @param from first receipt that was looked at
 * @param until last one
 */
public record Outcome(
        Wish wish,
        Comparison comparison,
        Expectation was,
        Expectation willBe,
        boolean whole,
        Instant from,
        Instant until) {
    /** Days of one trap's season, for what to expect. */
    public static final int SEASON_DAYS = 90;

    /** Swarms that are no longer told: answered to be swarms, or unanswered ones that nothing spoke against. */
    public List<Event> missed() {
        return moveIns(Change.LOST).stream().filter(event -> !isFalse(event)).toList();
    }

    public List<Event> falseGone() {
        return moveIns(Change.LOST).stream().filter(Outcome::isFalse).toList();
    }

    public List<Event> later() {
        return moveIns(Change.LATER).stream().filter(event -> !isFalse(event)).toList();
    }

    public List<Event> gained() {
        return moveIns(Change.GAINED);
    }

    private List<Event> moveIns(Change change) {
        return comparison.of(Kind.MOVE_IN).stream()
                .filter(event -> event.change() == change)
                .toList();
    }

    /** Whether the keeper denied it, or the program itself took it back and nobody said otherwise. */
    public static boolean isFalse(Event event) {
        return event.truth() == Truth.FALSE || event.truth() == Truth.UNANSWERED && event.withdrawn();
    }

    /** The whole in one line, as it is kept with a version that is adopted. */
    public String words() {
        List<String> parts = new ArrayList<>();
        parts.add(count(falseGone().size(), "false alarm", "false alarms") + " gone");
        parts.add(missed().isEmpty() ? "no swarm missed" : count(missed().size(), "swarm", "swarms") + " missed");
        if (!later().isEmpty()) {
            long most = later().stream()
                    .mapToLong(event -> event.shift().toMinutes())
                    .max()
                    .orElse(0);
            parts.add(later().size() + " told later, by " + most + " min at most");
        }
        if (!gained().isEmpty()) {
            parts.add(count(gained().size(), "alarm more", "alarms more"));
        }
        return String.join(", ", parts) + ". " + expected();
    }

    private String expected() {
        return willBe.quietDays() == 0
                ? "No quiet day to expect anything from."
                : String.format(
                        Locale.ROOT,
                        "False alarms to expect in a trap's season: %.2f, before %.2f.",
                        willBe.perSeason(),
                        was.perSeason());
    }

    private static String count(int number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }
}
