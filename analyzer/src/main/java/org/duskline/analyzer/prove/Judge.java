package org.duskline.analyzer.prove;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.season.Spell;
import org.duskline.analyzer.season.TrapTruth;

/**
 * Matches the findings at one trap with its truth, by the definitions in docs/detection.md: a move-in counts when it is
 * raised no earlier than a minute before the first bees, with an onset from three hours before them to a day after the
 * last.
 */
final class Judge {
    private static final double HOUR = 3600;
    private static final double DAY = 86400;

    private final TrapTruth trap;
    private final List<Finding> findings;
    private final List<Cause> causes;
    private final boolean counterOnly;

    private Judge(TrapTruth trap, List<Finding> findings) {
        this.trap = trap;
        this.findings = findings.stream()
                .filter(f -> f.node().equals(trap.node()))
                .sorted(Comparator.comparing(Finding::raised))
                .toList();
        this.causes = Cause.at(trap);
        this.counterOnly = trap.fitted().equals("counter");
    }

    static JudgedTrap judge(String level, TrapTruth trap, List<Finding> findings) {
        return new Judge(trap, findings).judge(level);
    }

    private static double seconds(Instant instant) {
        return instant.toEpochMilli() / 1000.0;
    }

    private List<Finding> of(Kind kind) {
        return findings.stream().filter(f -> f.kind() == kind).toList();
    }

    private JudgedTrap judge(String level) {
        int count = trap.arrivals().size();
        Finding[] first = new Finding[count];
        int[] repeats = new int[count];
        Map<String, Integer> falseMoveIns = new TreeMap<>();
        List<JudgedTrap.Certainty> certainties = new ArrayList<>();
        for (Finding finding : of(Kind.MOVE_IN)) {
            int match = match(finding);
            certainties.add(new JudgedTrap.Certainty(finding.probability(), match >= 0));
            if (match < 0) {
                tally(falseMoveIns, Cause.nearest(causes, seconds(finding.onset()), counterOnly));
            } else if (first[match] == null) {
                first[match] = finding;
            } else {
                repeats[match]++;
            }
        }
        return scoutings(level, first, repeats, falseMoveIns, certainties);
    }

    private int match(Finding finding) {
        return arrivalOf(trap, finding);
    }

    /** Which of the trap's arrivals a move-in tells of; -1 for none. */
    static int arrivalOf(TrapTruth trap, Finding finding) {
        double onset = seconds(finding.onset());
        for (int i = 0; i < trap.arrivals().size(); i++) {
            TrapTruth.Arrival arrival = trap.arrivals().get(i);
            if (seconds(finding.raised()) >= arrival.start() - 60
                    && onset >= arrival.start() - 3 * HOUR
                    && onset <= arrival.end() + DAY) {
                return i;
            }
        }
        return -1;
    }

    private static void tally(Map<String, Integer> counts, String what) {
        counts.merge(what, 1, Integer::sum);
    }

    private record Touched(double start, double end, boolean arrival) {}

    private JudgedTrap scoutings(
            String level,
            Finding[] first,
            int[] repeats,
            Map<String, Integer> falseMoveIns,
            List<JudgedTrap.Certainty> certainties) {
        List<Touched> real = new ArrayList<>();
        trap.scoutingsWithoutArrival().forEach(s -> real.add(new Touched(s.start(), s.end(), false)));
        trap.arrivals().forEach(a -> real.add(new Touched(a.scoutsStart(), a.end(), true)));
        Set<Touched> seen = new HashSet<>();
        Map<String, Integer> falseScoutings = new TreeMap<>();
        int right = 0;
        for (Finding finding : of(Kind.SCOUTING)) {
            List<Touched> hits = real.stream()
                    .filter(r -> seconds(finding.onset()) <= r.end() && seconds(finding.raised()) >= r.start())
                    .toList();
            seen.addAll(hits);
            if (hits.isEmpty()) {
                tally(falseScoutings, Cause.nearest(causes, seconds(finding.onset()), true));
            } else {
                right++;
            }
        }
        int episodesSeen = (int) seen.stream().filter(s -> !s.arrival()).count();
        return new JudgedTrap(
                level,
                trap.fitted(),
                trap.periodS(),
                trap.watchedDays(),
                arrivals(first, repeats),
                falseMoveIns,
                trap.scoutingsWithoutArrival().size(),
                episodesSeen,
                right,
                falseScoutings,
                trap.departures().size(),
                departuresFound().size(),
                departuresFalse(),
                trap.robbings().size(),
                robbingsFound().size(),
                (int) of(Kind.ROBBING).stream()
                        .filter(f -> robbingsTouched(f).isEmpty())
                        .count(),
                certainties);
    }

    private List<JudgedArrival> arrivals(Finding[] first, int[] repeats) {
        List<JudgedArrival> arrivals = new ArrayList<>();
        for (int i = 0; i < first.length; i++) {
            TrapTruth.Arrival arrival = trap.arrivals().get(i);
            double raised = first[i] == null ? Double.NaN : seconds(first[i].raised());
            double probability = first[i] == null ? Double.NaN : first[i].probability();
            double warned = of(Kind.SCOUTING).stream()
                    .mapToDouble(f -> seconds(f.raised()))
                    .filter(at -> at >= arrival.scoutsStart() && at < arrival.start())
                    .map(at -> (arrival.start() - at) / HOUR)
                    .findFirst()
                    .orElse(Double.NaN);
            Boolean evening = Evening.told(trap, arrival, raised);
            arrivals.add(new JudgedArrival(arrival, raised, probability, repeats[i], warned, evening));
        }
        return arrivals;
    }

    private static boolean within(Spell spell, Finding finding, double before) {
        double onset = seconds(finding.onset());
        return spell.start() - before <= onset && onset <= spell.end() + 6 * HOUR;
    }

    private Set<TrapTruth.Departure> departuresFound() {
        Set<TrapTruth.Departure> found = new HashSet<>();
        for (Finding finding : of(Kind.DEPARTURE)) {
            trap.departures().stream().filter(d -> within(d, finding, HOUR)).forEach(found::add);
        }
        return found;
    }

    private int departuresFalse() {
        return (int) of(Kind.DEPARTURE).stream()
                .filter(f -> trap.departures().stream().noneMatch(d -> within(d, f, HOUR)))
                .filter(f -> trap.handlings().stream()
                        .noneMatch(h -> h.kind().equals("collection") && within(h, f, 3 * HOUR)))
                .count();
    }

    private List<TrapTruth.Robbing> robbingsTouched(Finding finding) {
        return trap.robbings().stream()
                .filter(r -> seconds(finding.onset()) <= r.end() && seconds(finding.raised()) >= r.start())
                .toList();
    }

    private Set<TrapTruth.Robbing> robbingsFound() {
        Set<TrapTruth.Robbing> found = new HashSet<>();
        of(Kind.ROBBING).forEach(f -> found.addAll(robbingsTouched(f)));
        return found;
    }
}
