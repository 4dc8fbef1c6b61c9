package org.duskline.analyzer.evening;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;

/** An invented line of traps on an evening in May, nowhere in particular. */
final class Line {
    static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
    static final LocalDate EVENING = LocalDate.parse("2026-05-12");
    static final Instant ONSET = Instant.parse("2026-05-12T11:04:00Z");
    static final Instant MADE = Instant.parse("2026-05-12T15:00:00Z");
    static final Place HOME = new Place(47.9, 15.9);

    private Line() {}

    static Trap trap(String name, double latitude, double longitude) {
        return new Trap(name, latitude, longitude, ZONE);
    }

    static Finding moveIn(String trap, double probability) {
        return moveIn(trap, probability, Stage.ARRIVED);
    }

    static Finding moveIn(String trap, double probability, Stage stage) {
        return new Finding(
                trap,
                "n07",
                Kind.MOVE_IN,
                ONSET,
                ONSET.plusSeconds(480),
                stage,
                ONSET.plusSeconds(480),
                probability,
                "+1.42 kg in 14 min, 2,310 more in than out, 24 C",
                List.of(new Evidence("+1.42 kg in 14 min (threshold 0.60)", 6)),
                Map.of(
                        Rival.SWARM,
                        probability,
                        Rival.RAIN,
                        (1 - probability) * 0.7,
                        Rival.HANDS,
                        (1 - probability) * 0.3),
                Optional.of(new SwarmSize(1.42, 1.1, 1.8, 11_000)),
                1);
    }

    static TrapTonight filled(String name, double latitude, double longitude, double probability, Visit... visits) {
        return new TrapTonight(
                trap(name, latitude, longitude),
                Fitted.BOTH,
                true,
                Optional.of(moveIn(name, probability)),
                8.2,
                List.of(visits),
                List.of());
    }

    static TrapTonight filling(String name, double latitude, double longitude) {
        return new TrapTonight(
                trap(name, latitude, longitude),
                Fitted.BOTH,
                true,
                Optional.of(moveIn(name, 0.99, Stage.RAISED)),
                8.2,
                List.of(),
                List.of());
    }

    static TrapTonight empty(String name) {
        return new TrapTonight(trap(name, 48, 16), Fitted.BOTH, true, Optional.empty(), 8.2, List.of(), List.of());
    }

    static Visit visit(String trap, VisitKind kind, String at) {
        return Visit.of(trap, kind, Instant.parse(at), "Ansgar");
    }

    static EveningSheet sheet(TrapTonight... traps) {
        return EveningSheet.of(EVENING, ZONE, MADE, List.of(traps), RoundSettings.USUAL.from(HOME));
    }
}
