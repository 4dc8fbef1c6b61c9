package org.duskline.web.page.board;

import java.sql.SQLException;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.Store;
import org.duskline.collector.store.StoreProblem;
import org.duskline.collector.trap.Trap;

/** The board over the one database file. Reads the last commit and never waits for a writer. */
public final class StoreWatchboard implements Watchboard {
    private final Store store;
    private final FindingLog findings;
    private final InstantSource clock;
    private final Supplier<BrokerLink> link;
    private final StoredCurves curves;
    private final StoredTrap traps;
    private final StoredEvening evening;

    /**
     * @param conditions the condition of a trap by its name, as the analyser has it
     * @param link how the connection to the broker stands
     * @param habits how the keeper works
     */
    public StoreWatchboard(
            Store store,
            FindingLog findings,
            VisitLog visits,
            AnswerLog answers,
            Function<String, Condition> conditions,
            Supplier<BrokerLink> link,
            Habits habits,
            InstantSource clock) {
        this.store = store;
        this.findings = findings;
        this.clock = clock;
        this.link = link;
        StoredCurve curve = new StoredCurve(store, new StoredDrift(store));
        StoredNights nights = new StoredNights();
        this.curves = new StoredCurves(curve, nights);
        this.traps = new StoredTrap(store, curve, conditions);
        this.evening = new StoredEvening(store, curve, nights, visits, answers, habits);
    }

    @Override
    public LineOverview line() {
        return reading(() -> {
            Instant now = clock.instant();
            LineAtOnce line = LineAtOnce.read(store, findings);
            return new LineOverview(now, link.get(), trapsNow(now, line), line.looseNodes(now));
        });
    }

    @Override
    public Tonight tonight() {
        return reading(() -> {
            Instant now = clock.instant();
            LineAtOnce line = LineAtOnce.read(store, findings);
            return evening.tonight(now, link.get(), trapsNow(now, line), line.standing());
        });
    }

    @Override
    public Optional<TrapDetail> trap(String name) {
        return reading(() -> store.line().trap(name).map(this::detail));
    }

    @Override
    public Optional<Doorstep> doorstep(String name) {
        return reading(() -> store.line().trap(name).map(trap -> {
            Instant now = clock.instant();
            LineAtOnce line = LineAtOnce.read(store, findings);
            return evening.doorstep(now, link.get(), traps.now(trap, now, line), line.standing());
        }));
    }

    @Override
    public void curve(String trap, Instant from, Instant until, Consumer<CurvePoint> points) {
        curves.curve(trap, from, until, points);
    }

    @Override
    public List<Night> nights(Trap trap, Instant from, Instant until) {
        return curves.nights(trap, from, until);
    }

    @Override
    public List<Finding> findings(Instant since, int limit) {
        return reading(() -> findings.latest(limit).stream()
                .filter(finding -> !finding.raised().isBefore(since))
                .toList());
    }

    @Override
    public Answers answers(List<Finding> findings) {
        return reading(() -> evening.answers(findings));
    }

    private List<TrapNow> trapsNow(Instant now, LineAtOnce line) {
        return line.traps().stream().map(trap -> traps.now(trap, now, line)).toList();
    }

    private TrapDetail detail(Trap trap) {
        Instant now = clock.instant();
        List<Finding> all = findings.ofTrap(trap.name(), Instant.MIN, Instant.MAX).stream()
                .sorted(Comparator.comparing(Finding::raised).reversed())
                .toList();
        LineAtOnce line = LineAtOnce.read(store, findings);
        TrapNow there = traps.now(trap, now, line);
        List<KeptVisit> visits = evening.visitsAt(trap.name()).stream()
                .sorted(Comparator.comparing(kept -> kept.visit().at(), Comparator.reverseOrder()))
                .toList();
        return new TrapDetail(
                now,
                link.get(),
                there,
                recordedFrom(trap, line),
                all,
                visits,
                evening.due(now, there, line.standing(), visits));
    }

    private static Optional<Instant> recordedFrom(Trap trap, LineAtOnce line) {
        return line.fittings().getOrDefault(trap.name(), List.of()).stream()
                .flatMap(fitting -> line
                        .heardThere(fitting)
                        .map(HeardNode::firstHeard)
                        .map(first -> first.isBefore(fitting.from()) ? fitting.from() : first)
                        .stream())
                .min(Comparator.naturalOrder());
    }

    /** Reads, and says in words when the stored data can not be read. */
    static <T> T reading(Supplier<T> reading) {
        try {
            return reading.get();
        } catch (StoreProblem unreadable) {
            throw new BoardUnavailable(unreadable.getMessage(), unreadable);
        } catch (RuntimeException failed) {
            for (Throwable cause = failed; cause != null; cause = cause.getCause()) {
                if (cause instanceof SQLException sql) {
                    throw new BoardUnavailable("The database could not be read: " + sql.getMessage() + ".", failed);
                }
            }
            throw failed;
        }
    }
}
