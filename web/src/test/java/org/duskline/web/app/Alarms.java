package org.duskline.web.app;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.Stage;

/** Swarms of our invention. */
final class Alarms {
    private Alarms() {}

    static Finding moveIn(String trap, Instant onset, Instant raised) {
        return new Finding(
                trap,
                "n07",
                Kind.MOVE_IN,
                onset,
                raised,
                Stage.RAISED,
                raised,
                0.97,
                "+1.42 kg in 14 min (threshold 0.60)",
                List.of(),
                Map.of(Rival.SWARM, 0.97, Rival.HANDS, 0.03),
                Optional.empty(),
                1);
    }
}
