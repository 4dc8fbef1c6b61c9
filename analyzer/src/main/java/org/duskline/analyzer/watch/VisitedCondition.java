package org.duskline.analyzer.watch;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;

/** How a trap is by what its keeper last did there, where that says more than its samples. */
final class VisitedCondition {
    private VisitedCondition() {}

    /** Closed or collected; empty where the samples decide, as they do once a later swarm has come. */
    static Optional<Condition> of(List<Visit> visits, Occupancy occupancy) {
        return visits.stream()
                .filter(visit ->
                        visit.kind() == VisitKind.CLOSED || visit.kind().endsAClosing())
                .max(Comparator.comparing(Visit::at))
                .filter(visit -> !occupancy.occupied()
                        || occupancy.onsetMillis() <= visit.at().toEpochMilli())
                .flatMap(visit -> of(visit.kind()));
    }

    private static Optional<Condition> of(VisitKind kind) {
        return switch (kind) {
            case CLOSED -> Optional.of(Condition.CLOSED);
            case COLLECTED, TAKEN_DOWN -> Optional.of(Condition.COLLECTED);
            case SET, BAITED, LOOKED, OPENED, REHUNG -> Optional.empty();
        };
    }
}
