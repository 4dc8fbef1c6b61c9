package org.duskline.analyzer.prove;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.season.TrapTruth;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.watch.LineWatch;

/** The visits of a synthetic season as its keeper wrote them down: not all of them, and some hours late. */
final class WrittenVisits {
    private static final Duration LATE = Duration.ofHours(6);
    private static final String KEEPER = "invented keeper";

    private final List<Visit> unwritten = new ArrayList<>();
    private final Map<String, List<Visit>> written = new HashMap<>();

    WrittenVisits(List<TrapTruth> traps) {
        for (TrapTruth trap : traps) {
            for (TrapTruth.Handling handling : trap.handlings()) {
                if (handling.recorded()) {
                    write(trap.trap(), handling);
                }
            }
        }
        unwritten.sort(Comparator.comparing(Visit::at));
    }

    private void write(String trap, TrapTruth.Handling handling) {
        if (handling.kind().equals("collection")) {
            unwritten.add(Visit.of(trap, VisitKind.COLLECTED, instant(handling.start()), KEEPER));
            if (handling.fate().equals("rehung")) {
                unwritten.add(Visit.of(trap, VisitKind.REHUNG, instant(handling.end()), KEEPER));
            }
        } else {
            unwritten.add(Visit.of(trap, VisitKind.LOOKED, instant(handling.start()), KEEPER));
        }
    }

    private static Instant instant(double second) {
        return Instant.ofEpochMilli((long) (second * 1000));
    }

    /** Hands what has been written down by now to the watch; returns what that changed. */
    List<Finding> until(Instant now, LineWatch watch) {
        List<Finding> changes = new ArrayList<>();
        while (!unwritten.isEmpty() && unwritten.get(0).at().plus(LATE).isBefore(now)) {
            Visit visit = unwritten.remove(0);
            List<Visit> standing = written.computeIfAbsent(visit.trap(), trap -> new ArrayList<>());
            standing.add(visit);
            changes.addAll(watch.visited(visit.trap(), standing, now));
        }
        return changes;
    }
}
