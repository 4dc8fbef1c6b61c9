package org.duskline.analyzer.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.LongConsumer;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Arrival;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/**
 * The analyser's entry: reads what has arrived in the store behind a saved cursor, lets the {@link LineWatch} fold it,
 * and keeps findings and cursor in one transaction. After a restart it re-reads the days that the folds need; what was
 * told before is not told again. One thread at a time.
 */
public final class Analyzer {
    private static final int ARRIVALS_AT_ONCE = 2000;

    private final Store store;
    private final FindingLog log;
    private final VisitLog visits;
    private final FindingLog.Along along;
    private final Function<String, InForce> inForce;
    private final Rereading rereading;
    private Map<String, InForce> watchedUnder = Map.of();
    private LineWatch watch;
    private Fittings fittings = Fittings.NONE;
    private long cursor;
    private long visitsRead;

    /**
     * An analyser whose thresholds never change.
     *
     * @param visits what keepers did at the traps
     * @param along written in one transaction with the findings
     * @param version version of the thresholds, noted in each finding
     */
    public Analyzer(
            Store store, FindingLog log, VisitLog visits, Thresholds thresholds, int version, FindingLog.Along along) {
        this(store, log, visits, trap -> new InForce(version, thresholds), along);
    }

    /**
     * @param visits what keepers did at the traps
     * @param inForce what holds at a trap at present, by its name; asked before each look, and once it answers otherwise
     *     the days that the folds need are folded anew
     * @param along written in one transaction with the findings
     */
    public Analyzer(
            Store store, FindingLog log, VisitLog visits, Function<String, InForce> inForce, FindingLog.Along along) {
        this.store = store;
        this.log = log;
        this.visits = visits;
        this.along = along;
        this.inForce = inForce;
        this.rereading = new Rereading(store, log);
        this.watch = freshWatch();
        this.cursor = log.cursor();
        reread();
    }

    private LineWatch freshWatch() {
        Map<String, InForce> fixed = new HashMap<>();
        watchedUnder = fixed;
        return new LineWatch(trap -> fixed.computeIfAbsent(trap, inForce));
    }

    private boolean othersInForce() {
        return watchedUnder.entrySet().stream()
                .anyMatch(watched -> !inForce.apply(watched.getKey()).equals(watched.getValue()));
    }

    /** Analyses all that has arrived since the last call; returns what is new or changed, already kept. */
    public synchronized List<Finding> advance() {
        return advance(pack -> {});
    }

    /**
     * Analyses all that has arrived since the last call.
     *
     * @param progress told the last pack after each stretch
     */
    public synchronized List<Finding> advance(LongConsumer progress) {
        if (othersInForce()) {
            lineChanged();
        }
        readLine();
        List<Finding> all = new ArrayList<>();
        for (List<Arrival> arrivals = next(); !arrivals.isEmpty(); arrivals = next()) {
            List<Finding> changes = new ArrayList<>();
            for (Arrival arrival : arrivals) {
                changes.addAll(take(arrival));
            }
            cursor = arrivals.get(arrivals.size() - 1).pack();
            log.keep(changes, cursor, along);
            all.addAll(changes);
            progress.accept(cursor);
        }
        return all;
    }

    /**
     * Notices silence as time passes without readings, and visits that were written down since; returns what is new,
     * already kept.
     */
    public synchronized List<Finding> tick(Instant now) {
        List<Finding> changes = new ArrayList<>(watch.tick(now));
        changes.addAll(readVisits(now));
        if (!changes.isEmpty()) {
            log.keep(changes, cursor, along);
        }
        return changes;
    }

    /** Reads the line again and folds everything needed anew, after a fitting, a calibration or a trap was changed. */
    public synchronized void lineChanged() {
        watch = freshWatch();
        reread();
    }

    /** The condition of a trap as of the last sample. */
    public synchronized Condition condition(String trap) {
        return watch.condition(trap);
    }

    private List<Arrival> next() {
        return store.samples().arrivalsAfter(cursor, ARRIVALS_AT_ONCE);
    }

    private void readLine() {
        fittings = Fittings.of(store.line().fittings());
        for (Trap trap : store.line().traps()) {
            if (!watch.watches(trap.name())) {
                fittings.last(trap).ifPresent(fitting -> {
                    watch.watch(trap, fitting.fitted(), known(trap));
                    store.line().laneBlocks(fitting.node()).forEach(block -> watch.counterIs(trap.name(), block));
                    watch.visited(trap.name(), standing(trap.name()), Instant.MIN);
                });
            }
        }
    }

    /** Hands visits written down since the last look to the watch, with all others to the same traps. */
    private List<Finding> readVisits(Instant now) {
        List<Finding> changes = new ArrayList<>();
        Set<String> visited = new LinkedHashSet<>();
        for (KeptVisit written : visits.writtenAfter(visitsRead)) {
            visited.add(written.visit().trap());
            visitsRead = written.entry();
        }
        for (String trap : visited) {
            if (watch.watches(trap)) {
                changes.addAll(watch.visited(trap, standing(trap), now));
            }
        }
        return changes;
    }

    private List<Visit> standing(String trap) {
        return visits.of(trap).stream().map(KeptVisit::visit).toList();
    }

    private List<Finding> known(Trap trap) {
        return log.ofTrap(trap.name(), Instant.MIN, Instant.MAX);
    }

    private List<Finding> take(Arrival arrival) {
        List<Finding> changes = new ArrayList<>();
        for (Fittings.Stretch stretch : fittings.stretches(arrival)) {
            changes.addAll(take(stretch.fitting(), stretch.samples(), arrival.received()));
        }
        return changes;
    }

    private List<Finding> take(Fitting fitting, List<Sample> samples, Instant received) {
        return watch.take(fitting.trap(), fitting.node(), fitting.fitted(), samples, received);
    }

    /** Folds the last days again from the store; their findings are known, so nothing is told. */
    private void reread() {
        readLine();
        List<Finding> changes = new ArrayList<>();
        for (Rereading.Reread reread : rereading.samples(fittings, cursor)) {
            changes.addAll(take(
                    reread.fitting(), List.of(reread.sample()), reread.sample().received()));
        }
        changes.removeIf(rereading::isOldNews);
        if (!changes.isEmpty()) {
            log.keep(changes, cursor, along);
        }
    }
}
