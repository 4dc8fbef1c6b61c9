package org.duskline.web.deliver;

import java.time.Duration;
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

/** Findings at traps of an invented line. */
final class InventedAlarms {
    private InventedAlarms() {}

    static Finding raised(String trap, Kind kind, Instant onset) {
        Instant raised = onset.plus(Duration.ofMinutes(8));
        return new Finding(
                trap,
                "n01",
                kind,
                onset,
                raised,
                Stage.RAISED,
                raised,
                0.93,
                "+1.42 kg in 14 min (threshold 0.60)",
                List.of(new Evidence("2,310 more in than out", 4.1)),
                Map.of(Rival.SWARM, 0.93, Rival.HANDS, 0.05, Rival.NOTHING, 0.02),
                kind == Kind.MOVE_IN ? Optional.of(new SwarmSize(1.42, 1.1, 1.8, 10_900)) : Optional.empty(),
                1);
    }

    static Finding turned(Finding finding, Stage stage, Instant changed) {
        return new Finding(
                finding.trap(),
                finding.node(),
                finding.kind(),
                finding.onset(),
                finding.raised(),
                stage,
                changed,
                finding.probability(),
                finding.summary(),
                finding.evidence(),
                finding.rivals(),
                finding.size(),
                finding.thresholds());
    }
}
