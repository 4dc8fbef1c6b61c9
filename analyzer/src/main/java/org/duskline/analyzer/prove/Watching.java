package org.duskline.analyzer.prove;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.duskline.analyzer.detect.Forecast;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.watch.LineWatch;

/**
 * What one watch over a season said.
 *
 * @param first every finding as it was first told
 * @param borneOut those that were strengthened later
 * @param takenBack those that were withdrawn later
 * @param forecasts what was foretold when scouts were told
 */
record Watching(List<Finding> first, Set<Identity> borneOut, Set<Identity> takenBack, List<Foretold> forecasts) {

    /** What makes a finding the same one when it is said again. */
    record Identity(String trap, Kind kind, Instant onset) {
        static Identity of(Finding finding) {
            return new Identity(finding.trap(), finding.kind(), finding.onset());
        }
    }

    /** What was foretold at a trap. */
    record Foretold(String trap, Instant at, Forecast forecast) {}

    boolean borneOut(Finding finding) {
        return borneOut.contains(Identity.of(finding));
    }

    boolean takenBack(Finding finding) {
        return takenBack.contains(Identity.of(finding));
    }

    /** Takes notes while a season is watched. */
    static final class Notes {
        private final Map<Identity, Finding> first = new LinkedHashMap<>();
        private final Set<Identity> borneOut = new HashSet<>();
        private final Map<Identity, Stage> last = new HashMap<>();
        private final List<Foretold> forecasts = new ArrayList<>();

        void take(Finding finding, LineWatch watch) {
            Identity identity = Identity.of(finding);
            first.putIfAbsent(identity, finding);
            last.put(identity, finding.stage());
            if (finding.stage() == Stage.STRENGTHENED) {
                borneOut.add(identity);
            }
            if (finding.kind() == Kind.SCOUTING && finding.stage() == Stage.RAISED) {
                watch.forecast(finding.trap())
                        .ifPresent(forecast -> forecasts.add(new Foretold(finding.trap(), finding.raised(), forecast)));
            }
        }

        Watching watching() {
            Set<Identity> takenBack = new HashSet<>();
            last.forEach((identity, stage) -> {
                if (stage == Stage.WITHDRAWN) {
                    takenBack.add(identity);
                }
            });
            return new Watching(
                    List.copyOf(first.values()), Set.copyOf(borneOut), Set.copyOf(takenBack), List.copyOf(forecasts));
        }
    }
}
