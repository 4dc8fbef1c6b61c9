package org.duskline.analyzer.watch;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.duskline.analyzer.visit.Closing;
import org.duskline.analyzer.visit.Visit;

/** What the keeper recorded of having done at one trap, as the fold asks for it. */
record KeepersHands(List<Visit> visits, List<Closing> closings) {
    static final KeepersHands NONE = new KeepersHands(List.of(), List.of());

    static KeepersHands of(List<Visit> visits) {
        return visits.isEmpty() ? NONE : new KeepersHands(List.copyOf(visits), Closing.of(visits));
    }

    boolean between(long fromMillis, long toMillis) {
        return visits.stream().anyMatch(visit -> in(visit, fromMillis, toMillis));
    }

    /** Whether a visit later than one time and not later than another left no colony in the trap. */
    boolean emptied(long afterMillis, long toMillis) {
        return visits.stream().anyMatch(visit -> visit.kind().emptiesTheTrap() && in(visit, afterMillis + 1, toMillis));
    }

    boolean shut(long timeMillis) {
        Instant time = Instant.ofEpochMilli(timeMillis);
        return closings.stream()
                .anyMatch(closing ->
                        !closing.from().isAfter(time) && closing.until().isAfter(time));
    }

    /** The earliest visit that stands in one record and not in the other; {@link Long#MAX_VALUE} where they agree. */
    long firstDifference(KeepersHands other) {
        Set<Visit> ours = new HashSet<>(visits);
        Set<Visit> theirs = new HashSet<>(other.visits);
        return Stream.concat(
                        visits.stream().filter(visit -> !theirs.contains(visit)),
                        other.visits.stream().filter(visit -> !ours.contains(visit)))
                .mapToLong(visit -> visit.at().toEpochMilli())
                .min()
                .orElse(Long.MAX_VALUE);
    }

    private static boolean in(Visit visit, long fromMillis, long toMillis) {
        long at = visit.at().toEpochMilli();
        return at >= fromMillis && at <= toMillis;
    }
}
