package org.duskline.web.page;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.duskline.analyzer.evening.AtTheTrap;
import org.duskline.analyzer.evening.EveningSheet;
import org.duskline.analyzer.evening.FlightEnd;
import org.duskline.analyzer.evening.Place;
import org.duskline.analyzer.evening.RoundSettings;
import org.duskline.analyzer.evening.TrapTonight;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.board.Look;
import org.duskline.web.page.board.Night;

/** What there is to fetch and to look after on the invented line's one evening. */
final class InventedEvening {
    /** So many traps have filled on the night that is too much for one keeper. */
    static final int MANY = 14;

    static final String OLD_BAIT = "Bait is 17 days old; you renew it every 14 days.";

    private static final LocalDate DAY = LocalDate.of(2026, 5, 12);
    private static final Place KEEPERS_HOME = new Place(46.93, 15.02);

    private static final List<String> FIELDS = List.of(
            "Bramble Wharf", "Cold Spring", "Dovecote", "Elder Cut", "Fallow Cross", "Glebe Barn", "Heron Ford");

    private InventedEvening() {}

    static EveningSheet sheet(List<TrapTonight> traps) {
        return EveningSheet.of(DAY, InventedLine.ZONE, InventedLine.NOW, traps, RoundSettings.USUAL.from(KEEPERS_HOME));
    }

    static List<TrapTonight> twoSwarms() {
        return List.of(
                tonight(InventedBox.named("Alder Sluice"), InventedFindings.swarm()),
                tonight(InventedBox.named("Tithe Loft"), InventedFindings.likelySwarm()));
    }

    private static TrapTonight tonight(InventedBox box, Finding moveIn) {
        return tonight(box.trap(), box.fitted(), moveIn, box.fitted().hasScale() ? 9.42 : Double.NaN);
    }

    static List<TrapTonight> manySwarms() {
        return IntStream.range(0, MANY)
                .mapToObj(number -> {
                    String name = FIELDS.get(number / 2) + (number % 2 == 0 ? " Upper" : " Lower");
                    Trap trap =
                            new Trap(name, 46.9 + 0.011 * (number % 4), 15.1 + 0.014 * (number / 4), InventedLine.ZONE);
                    return tonight(trap, Fitted.BOTH, InventedFindings.swarmAt(name), 9.2 + 0.1 * number);
                })
                .toList();
    }

    private static TrapTonight tonight(Trap trap, Fitted fitted, Finding moveIn, double weightKg) {
        return new TrapTonight(trap, fitted, true, Optional.of(moveIn), weightKg, List.of(), List.of());
    }

    /** Traps that have no swarm and want looking after. */
    static List<Look> looks() {
        return List.of(
                look(InventedFindings.scouts("Old Kiln", "2026-05-12T07:10:00Z", Stage.RAISED)),
                look(InventedFindings.silence()),
                new Look("Weir House", Optional.empty(), OLD_BAIT));
    }

    private static Look look(Finding finding) {
        return new Look(finding.trap(), Optional.of(finding), finding.summary());
    }

    /** What the keeper hears at the entrance; each trap says something else. */
    static AtTheTrap entrance(String trap) {
        return switch (trap) {
            case "Alder Sluice" -> new AtTheTrap.Quiet(Duration.ofMinutes(12), true);
            case "Three Stiles" -> new AtTheTrap.ByTheLight(false, "civil dusk");
            case "Hollow Gate" -> new AtTheTrap.Unheard(Duration.ofHours(9), true);
            default -> new AtTheTrap.StillFlying(6);
        };
    }

    static FlightEnd flightEnd(Trap trap) {
        return FlightEnd.tonight(trap.latitude(), trap.longitude(), DAY, InventedLine.ZONE, List.of());
    }

    static Night night() {
        return nightAfter(DAY);
    }

    static Night nightAfter(LocalDate day) {
        return new Night(
                day.atTime(21, 0).atZone(InventedLine.ZONE).toInstant(),
                day.plusDays(1).atTime(4, 51).atZone(InventedLine.ZONE).toInstant());
    }
}
