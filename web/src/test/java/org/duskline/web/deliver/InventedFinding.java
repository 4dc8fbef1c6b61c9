package org.duskline.web.deliver;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.finding.SwarmSize;

/** A swarm that moved into a trap of our invention. */
final class InventedFinding {
    static final Instant ONSET = Instant.parse("2026-05-12T13:04:00Z");

    private InventedFinding() {}

    static Finding moveIn(Stage stage) {
        return new Finding(
                "Mill Race",
                "n07",
                Kind.MOVE_IN,
                ONSET,
                Instant.parse("2026-05-12T13:12:04Z"),
                stage,
                Instant.parse("2026-05-12T13:12:04Z"),
                0.98765,
                "A swarm moves in: +1.42 kg in 14 min",
                List.of(
                        new Evidence("+1.42 kg in 14 min (threshold 0.60)", 4.2),
                        new Evidence("rain nearby", Double.NaN)),
                Map.of(Rival.SWARM, 0.98765, Rival.HANDS, 0.01235),
                Optional.of(new SwarmSize(1.42, 1.2, 1.7, 11_000)),
                1);
    }
}
