package org.duskline.analyzer.visit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A stretch in which a trap's entrance was shut on a swarm.
 *
 * @param closed the visit that shut it
 * @param ended the visit that opened or emptied it; empty while it is shut
 */
public record Closing(Visit closed, Optional<Visit> ended) {

    /** The closings that a trap's visits tell of, in order of time. A trap that is shut twice stays shut from the first. */
    public static List<Closing> of(List<Visit> visits) {
        List<Closing> closings = new ArrayList<>();
        Visit shut = null;
        for (Visit visit :
                visits.stream().sorted(Comparator.comparing(Visit::at)).toList()) {
            if (visit.kind() == VisitKind.CLOSED && shut == null) {
                shut = visit;
            } else if (shut != null && visit.kind().endsAClosing()) {
                closings.add(new Closing(shut, Optional.of(visit)));
                shut = null;
            }
        }
        if (shut != null) {
            closings.add(new Closing(shut, Optional.empty()));
        }
        return closings;
    }

    /** The closing that holds after all of a trap's visits. */
    public static Optional<Closing> standing(List<Visit> visits) {
        List<Closing> closings = of(visits);
        return closings.isEmpty()
                ? Optional.empty()
                : Optional.of(closings.get(closings.size() - 1))
                        .filter(last -> last.ended().isEmpty());
    }

    public Instant from() {
        return closed.at();
    }

    /** When it ended; {@link Instant#MAX} while it is shut. */
    public Instant until() {
        return ended.map(Visit::at).orElse(Instant.MAX);
    }
}
