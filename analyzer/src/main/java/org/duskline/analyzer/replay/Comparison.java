package org.duskline.analyzer.replay;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.visit.Answer;

/**
 * What other thresholds would have told, against now.
 *
 * @param events everything that either told, by onset and trap
 */
public record Comparison(List<Event> events) {
    /** Two findings of a kind at a trap are one event when their onsets lie this close. */
    static final Duration SAME_EVENT = Duration.ofHours(3);

    /** How a finding fares under the other thresholds. */
    public enum Change {
        SAME,
        GAINED,
        LOST,
        EARLIER,
        LATER
    }

    /** What the keeper answered that it was. */
    public enum Truth {
        SWARM,
        FALSE,
        UNANSWERED
    }

    /**
     * One event, as both told it.
     *
     * @param now as told under the thresholds in force; empty if they did not
     * @param then as told under the others; empty if they did not
     */
    public record Event(Optional<Told> now, Optional<Told> then, Truth truth) {
        private Told either() {
            return now.or(() -> then).orElseThrow();
        }

        public String trap() {
            return either().trap();
        }

        public Kind kind() {
            return either().kind();
        }

        /** When it began, as told now, or else under the others. */
        public Instant onset() {
            return either().onset();
        }

        /** Told so much later under the others; negative for earlier, zero where only one of them told it. */
        public Duration shift() {
            return now.isPresent() && then.isPresent()
                    ? Duration.between(
                            now.get().first().raised(), then.get().first().raised())
                    : Duration.ZERO;
        }

        public Change change() {
            if (then.isEmpty()) {
                return Change.LOST;
            }
            if (now.isEmpty()) {
                return Change.GAINED;
            }
            if (shift().isZero()) {
                return Change.SAME;
            }
            return shift().isNegative() ? Change.EARLIER : Change.LATER;
        }

        /** Whether the program itself took it back, where it was told. */
        public boolean withdrawn() {
            return either().withdrawn();
        }
    }

    public Comparison {
        events = List.copyOf(events);
    }

    /**
     * Compares two replays of the same stretch.
     *
     * @param now under the thresholds in force
     * @param then under the others
     * @param answers in the order in which they were given; the last verdict on a finding counts
     */
    public static Comparison of(Played now, Played then, List<Answer> answers) {
        List<Event> events = new ArrayList<>();
        Set<Told> taken = new HashSet<>();
        for (Told one : now.told()) {
            Optional<Told> other = nearest(one, then.told(), taken);
            other.ifPresent(taken::add);
            events.add(new Event(Optional.of(one), other, truth(one, answers)));
        }
        for (Told one : then.told()) {
            if (!taken.contains(one)) {
                events.add(new Event(Optional.empty(), Optional.of(one), truth(one, answers)));
            }
        }
        events.sort(
                Comparator.comparing(Event::onset).thenComparing(Event::trap).thenComparing(Event::kind));
        return new Comparison(events);
    }

    private static Optional<Told> nearest(Told one, List<Told> among, Set<Told> taken) {
        return among.stream()
                .filter(other -> !taken.contains(other))
                .filter(other -> other.trap().equals(one.trap()) && other.kind() == one.kind())
                .filter(other -> apart(one.onset(), other.onset()).compareTo(SAME_EVENT) <= 0)
                .min(Comparator.comparing(other -> apart(one.onset(), other.onset())));
    }

    /** What a finding was, by the last verdict on the nearest event. */
    static Truth truth(Told told, List<Answer> answers) {
        Truth truth = Truth.UNANSWERED;
        Duration closest = SAME_EVENT;
        for (Answer answer : answers) {
            if (answer.said().isVerdict()
                    && answer.kind() == told.kind()
                    && answer.trap().equals(told.trap())
                    && apart(answer.onset(), told.onset()).compareTo(closest) <= 0) {
                closest = apart(answer.onset(), told.onset());
                truth = answer.said().deniesASwarm() ? Truth.FALSE : Truth.SWARM;
            }
        }
        return truth;
    }

    static Duration apart(Instant one, Instant other) {
        return Duration.between(one, other).abs();
    }

    /** The events that fare otherwise; empty where both told the same at the same moments. */
    public List<Event> differences() {
        return events.stream().filter(event -> event.change() != Change.SAME).toList();
    }

    /** Everything of one kind. */
    public List<Event> of(Kind kind) {
        return events.stream().filter(event -> event.kind() == kind).toList();
    }

    /** How many move-ins fare this way, of those that were this. */
    public int moveIns(Change change, Truth truth) {
        return (int) of(Kind.MOVE_IN).stream()
                .filter(event -> event.change() == change && event.truth() == truth)
                .count();
    }

    /** The same, trap by trap. */
    public Map<String, Comparison> byTrap() {
        return events.stream()
                .collect(Collectors.groupingBy(
                        Event::trap, TreeMap::new, Collectors.collectingAndThen(Collectors.toList(), Comparison::new)));
    }
}
