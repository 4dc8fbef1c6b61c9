package org.duskline.web.app;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.season.Watched;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;

/** What the demo's keeper, who is made up as everything there is, did at the traps before the watching begins. */
final class ValleyVisits {
    private static final String KEEPER = "Hedda";
    private static final List<Integer> DAYS_SINCE_BAITED = List.of(3, 5, 9, 12, 2, 17, 8, 6, 11, 4);
    private static final List<Integer> DAYS_SINCE_LOOKED = List.of(1, 5, 4, 6, 2, 3, 5, 6, 9, 4);

    private ValleyVisits() {}

    static void write(VisitLog visits, List<Watched> line, Instant live) {
        for (int i = 0; i < line.size(); i++) {
            String trap = line.get(i).trap().name();
            Instant hung = line.get(i).fitting().from();
            write(visits, Visit.of(trap, VisitKind.SET, hung, KEEPER));
            write(visits, Visit.of(trap, VisitKind.BAITED, daysBefore(live, DAYS_SINCE_BAITED, i), KEEPER));
            write(visits, Visit.of(trap, VisitKind.LOOKED, daysBefore(live, DAYS_SINCE_LOOKED, i), KEEPER));
        }
    }

    private static void write(VisitLog visits, Visit visit) {
        visits.record(visit, visit.at().plus(Duration.ofMinutes(2)), Optional.empty());
    }

    private static Instant daysBefore(Instant live, List<Integer> days, int i) {
        return live.minus(Duration.ofDays(days.get(i % days.size()))).minus(Duration.ofMinutes(37L * i));
    }
}
