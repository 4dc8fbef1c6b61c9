package org.duskline.web.page;

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
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;

/** Findings at the invented line. */
final class InventedFindings {
    private InventedFindings() {}

    static List<Finding> all() {
        return List.of(
                swarm(),
                likelySwarm(),
                scouts("Old Kiln", "2026-05-12T07:10:00Z", Stage.RAISED),
                robbers(),
                silence(),
                scouts("Alder Sluice", "2026-05-11T09:20:00Z", Stage.ENDED),
                rain());
    }

    static Finding swarm() {
        return swarmAt("Alder Sluice");
    }

    static Finding swarmAt(String trap) {
        return new Finding(
                trap,
                "n10",
                Kind.MOVE_IN,
                InventedLine.ARRIVAL,
                InventedLine.ARRIVAL.plus(Duration.ofMinutes(8)),
                Stage.STRENGTHENED,
                InventedLine.ARRIVAL.plus(Duration.ofHours(3)),
                0.987,
                "+1.42 kg in 22 min (threshold 0.60), 2,310 more in than out, 21 °C, scouts since yesterday 11:20.",
                List.of(
                        new Evidence("+1.42 kg in 22 min (threshold 0.60), and it stayed", 4.2),
                        new Evidence("2,310 more bees in than out", 3.1),
                        new Evidence("box 7 °C warmer than the shade since 14:00", 1.8),
                        new Evidence("scouts at Old Kiln did not fall silent", -0.4)),
                Map.of(Rival.SWARM, 0.987, Rival.HANDS, 0.009, Rival.RAIN, 0.003, Rival.NOTHING, 0.001),
                Optional.of(new SwarmSize(1.42, 1.31, 1.54, 11_200)),
                3);
    }

    static Finding likelySwarm() {
        return new Finding(
                "Tithe Loft",
                "n18",
                Kind.MOVE_IN,
                InventedLine.ARRIVAL,
                InventedLine.ARRIVAL.plus(Duration.ofMinutes(14)),
                Stage.RAISED,
                InventedLine.ARRIVAL.plus(Duration.ofMinutes(14)),
                0.81,
                "Up to 190 a minute inward for 20 min, 1,900 more in than out; no scale here to settle it.",
                List.of(
                        new Evidence("190 a minute inward, 60 times this trap's usual for the hour", 2.6),
                        new Evidence("no weight is measured here", -0.2)),
                Map.of(Rival.SWARM, 0.81, Rival.ROBBERS, 0.12, Rival.GLARE, 0.07),
                Optional.of(new SwarmSize(1.2, 0.6, 2.1, 9_500)),
                3);
    }

    static Finding scouts(String trap, String onset, Stage stage) {
        Instant began = Instant.parse(onset);
        return new Finding(
                trap,
                "n15",
                Kind.SCOUTING,
                began,
                began.plus(Duration.ofMinutes(40)),
                stage,
                began.plus(Duration.ofHours(9)),
                0.88,
                "Scouts come and go, 11 a minute, and weigh nothing: twelve times the usual for the hour.",
                List.of(new Evidence("in and out alike, 11 a minute against 0.9", 2.4)),
                Map.of(Rival.SCOUTS, 0.88, Rival.ROBBERS, 0.08, Rival.GLARE, 0.04),
                Optional.empty(),
                3);
    }

    static Finding robbers() {
        Instant began = Instant.parse("2026-05-12T07:30:00Z");
        return new Finding(
                "Chapel Nook",
                "n11",
                Kind.ROBBING,
                began,
                began.plus(Duration.ofHours(2)),
                Stage.RAISED,
                began.plus(Duration.ofHours(2)),
                0.93,
                "70 a minute both ways since 09:30 while the box lost 0.30 kg.",
                List.of(new Evidence("weight falls steadily under heavy traffic", 2.9)),
                Map.of(Rival.ROBBERS, 0.93, Rival.SCOUTS, 0.07),
                Optional.empty(),
                3);
    }

    static Finding silence() {
        Instant began = Instant.parse("2026-05-12T08:12:00Z");
        return new Finding(
                "Hollow Gate",
                "n13",
                Kind.UNHEARD,
                began,
                began.plus(Duration.ofHours(1)),
                Stage.RAISED,
                began.plus(Duration.ofHours(1)),
                0.99,
                "Nothing heard for 9 h",
                List.of(),
                Map.of(),
                Optional.empty(),
                3);
    }

    private static Finding rain() {
        Instant began = Instant.parse("2026-05-09T15:00:00Z");
        return new Finding(
                "Weir House",
                "n19",
                Kind.SOAKED,
                began,
                began.plus(Duration.ofMinutes(50)),
                Stage.WITHDRAWN,
                began.plus(Duration.ofHours(20)),
                0.35,
                "+0.31 kg within an hour at four traps at once: rain. It has dried since.",
                List.of(new Evidence("three neighbours gained the same in the same hour", 3.3)),
                Map.of(Rival.RAIN, 0.9, Rival.NOTHING, 0.1),
                Optional.empty(),
                2);
    }

    static KeptVisit baited(String trap) {
        Instant morning = Instant.parse("2026-05-12T06:20:00Z");
        Visit visit = new Visit(
                trap,
                VisitKind.BAITED,
                morning,
                "the keeper",
                Double.NaN,
                Optional.empty(),
                "fresh lure, door clear of ants");
        return new KeptVisit(1, 1, 1, visit, morning, "the keeper", false);
    }
}
