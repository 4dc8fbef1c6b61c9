package org.duskline.analyzer.prove;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.season.TrapTruth;

/**
 * Something that detection got wrong in a season with known truth.
 *
 * @param cost how bad it is for a keeper, on a rough scale on which a swarm missed is 100; own choice
 * @param what in the keeper's words
 * @param trap where
 * @param second when, Unix seconds
 * @param cause the nearest thing that truly happened
 * @param evidence what the finding rested on, weightiest first; empty where nothing was found
 */
record Mistake(double cost, String what, TrapTruth trap, double second, String cause, List<Evidence> evidence) {
    private static final double LATE_MINUTES = 20;

    /** All mistakes at one trap. */
    static List<Mistake> at(TrapTruth trap, JudgedTrap judged, Watching watching) {
        List<Finding> told = watching.first().stream()
                .filter(finding -> finding.node().equals(trap.node()))
                .toList();
        List<Mistake> all = new ArrayList<>();
        judged.arrivals().forEach(arrival -> arrival(trap, arrival, all));
        for (Finding finding : told) {
            falseAlarm(trap, finding, watching).ifPresent(all::add);
        }
        departuresMissed(trap, told, all);
        robbingsMissed(trap, told, all);
        return all;
    }

    private static void arrival(TrapTruth trap, JudgedArrival arrival, List<Mistake> all) {
        TrapTruth.Arrival truth = arrival.truth();
        if (arrival.heard() && !arrival.found()) {
            String what = String.format(
                    Locale.ROOT,
                    "A swarm of %.1f kg was missed (%s, %.0f min to enter)",
                    truth.massKg(),
                    truth.style(),
                    (truth.end() - truth.start()) / 60);
            all.add(new Mistake(100, what, trap, truth.half(), nearest(trap, truth.half()), List.of()));
        } else if (arrival.found() && arrival.afterHeardMinutes() > LATE_MINUTES) {
            double late = arrival.afterHeardMinutes();
            String what = String.format(Locale.ROOT, "A swarm of %.1f kg was told %.0f min late", truth.massKg(), late);
            all.add(new Mistake(
                    Math.min(60, 10 + late / 10), what, trap, truth.half(), nearest(trap, truth.half()), List.of()));
        }
        boolean counted = !trap.fitted().equals("scale");
        if (counted && truth.leadHours() >= 3 && !(arrival.warnedHours() >= 3)) {
            String what = String.format(
                    Locale.ROOT, "Scouts came %.0f h ahead and were not told three hours ahead", truth.leadHours());
            double then = truth.start() - Math.min(4, truth.leadHours()) * 3600;
            all.add(new Mistake(9, what, trap, then, "scouting", List.of()));
        }
        if (arrival.repeats() > 0) {
            all.add(new Mistake(
                    20, "A swarm was told more than once", trap, truth.half(), nearest(trap, truth.half()), List.of()));
        }
    }

    private static Optional<Mistake> falseAlarm(TrapTruth trap, Finding finding, Watching watching) {
        double onset = finding.onset().toEpochMilli() / 1000.0;
        boolean back = watching.takenBack(finding);
        Optional<Mistake> none = Optional.empty();
        return switch (finding.kind()) {
            case MOVE_IN ->
                Judge.arrivalOf(trap, finding) >= 0
                        ? none
                        : told(
                                back ? 45 : 60,
                                "A swarm was told that was none" + (back ? ", and taken back later" : ""),
                                trap,
                                finding);
            case DEPARTURE ->
                near(trap, onset) ? told(25, "A colony was said to leave that did not", trap, finding) : none;
            case SCOUTING -> scouted(trap, finding) ? none : told(8, "Scouts were told that were none", trap, finding);
            case ROBBING -> robbed(trap, finding) ? none : told(7, "Robbers were told that were none", trap, finding);
            default -> none;
        };
    }

    private static Optional<Mistake> told(double cost, String what, TrapTruth trap, Finding finding) {
        double onset = finding.onset().toEpochMilli() / 1000.0;
        double sure = finding.probability();
        return Optional.of(new Mistake(cost + sure, what, trap, onset, nearest(trap, onset), finding.evidence()));
    }

    private static boolean scouted(TrapTruth trap, Finding finding) {
        double onset = finding.onset().toEpochMilli() / 1000.0;
        double raised = finding.raised().toEpochMilli() / 1000.0;
        return trap.scoutingsWithoutArrival().stream().anyMatch(s -> onset <= s.end() && raised >= s.start())
                || trap.arrivals().stream().anyMatch(a -> onset <= a.end() && raised >= a.scoutsStart());
    }

    private static boolean robbed(TrapTruth trap, Finding finding) {
        double onset = finding.onset().toEpochMilli() / 1000.0;
        double raised = finding.raised().toEpochMilli() / 1000.0;
        return trap.robbings().stream().anyMatch(r -> onset <= r.end() && raised >= r.start());
    }

    /** Whether neither a departure nor a collection lies near. */
    private static boolean near(TrapTruth trap, double onset) {
        boolean left = trap.departures().stream().anyMatch(d -> Math.abs(d.start() - onset) < 6 * 3600);
        boolean taken = trap.handlings().stream()
                .anyMatch(h -> h.kind().equals("collection") && Math.abs(h.start() - onset) < 6 * 3600);
        return !left && !taken;
    }

    private static void departuresMissed(TrapTruth trap, List<Finding> told, List<Mistake> all) {
        for (TrapTruth.Departure departure : trap.departures()) {
            boolean found = told.stream()
                    .filter(finding -> finding.kind() == Kind.DEPARTURE)
                    .anyMatch(finding -> Math.abs(finding.onset().getEpochSecond() - departure.start()) < 6 * 3600);
            if (!found) {
                all.add(new Mistake(
                        30, "A colony left and nothing was said", trap, departure.start(), "departure", List.of()));
            }
        }
    }

    private static void robbingsMissed(TrapTruth trap, List<Finding> told, List<Mistake> all) {
        for (TrapTruth.Robbing robbing : trap.robbings()) {
            boolean found = told.stream()
                    .filter(finding -> finding.kind() == Kind.ROBBING)
                    .anyMatch(finding -> finding.onset().getEpochSecond() <= robbing.end()
                            && finding.raised().getEpochSecond() >= robbing.start());
            if (!found) {
                String what = String.format(
                        Locale.ROOT,
                        "Robbers took %.2f kg and nothing was said (%.0f a minute)",
                        robbing.lossKg(),
                        robbing.peakPassagesPerMin());
                all.add(new Mistake(5, what, trap, robbing.start() + 7200, "robbing", List.of()));
            }
        }
    }

    private static String nearest(TrapTruth trap, double second) {
        return Cause.nearest(Cause.at(trap), second, trap.fitted().equals("counter"));
    }

    /** The worst of them, no more than some of a kind, so that the list teaches more than one thing. */
    static List<Mistake> worst(List<Mistake> all, int most, int mostOfAKind) {
        List<Mistake> worst = new ArrayList<>();
        all.stream()
                .sorted(Comparator.comparingDouble((Mistake mistake) -> -mistake.cost()))
                .filter(mistake -> worst.size() < most)
                .filter(mistake -> worst.stream().filter(mistake::alike).count() < mostOfAKind)
                .forEach(worst::add);
        return worst;
    }

    private boolean alike(Mistake other) {
        return other.what.substring(0, 12).equals(what.substring(0, 12)) && other.cause.equals(cause);
    }
}
