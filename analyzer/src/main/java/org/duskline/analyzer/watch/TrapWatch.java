package org.duskline.analyzer.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.detect.Forecast;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.visit.Visit;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.LaneBlock;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/** The watch over one trap: its series, its fold with earlier states to go back to, and its ledger. */
final class TrapWatch {
    static final long KEPT_MILLIS = 9 * 24 * 3_600_000L;

    /** A visit is written down a little after hands touched the trap; own choice. */
    private static final long BEFORE_A_VISIT_MILLIS = 3_600_000L;

    private static final long BETWEEN_STATES_MILLIS = 2 * 3_600_000L;

    private final Trap trap;
    private final Ledger ledger;
    private final InForce inForce;
    private final boolean followsClosings;
    private final TrapSeries series = new TrapSeries(KEPT_MILLIS);
    private final Deque<TrapFold> states = new ArrayDeque<>();
    private Fitted fitted;
    private TrapFold fold;
    private String node = "";
    private Instant lastHeard = Instant.MIN;
    private long newest = Long.MIN_VALUE;
    private boolean unheard;
    private LaneBlock counter;
    private KeepersHands hands = KeepersHands.NONE;

    TrapWatch(Trap trap, Fitted fitted, List<Finding> known, InForce inForce, boolean followsClosings) {
        this.trap = trap;
        this.inForce = inForce;
        this.followsClosings = followsClosings;
        this.fitted = fitted;
        this.fold = new TrapFold(fitted);
        this.ledger = new Ledger(trap.name(), known);
    }

    Trap trap() {
        return trap;
    }

    Fitted fitted() {
        return fitted;
    }

    TrapSeries series() {
        return series;
    }

    List<Finding> findings() {
        return ledger.findings();
    }

    Instant lastHeard() {
        return lastHeard;
    }

    /** What the counter is made of; empty where nobody has said. */
    Optional<LaneBlock> counter() {
        return Optional.ofNullable(counter);
    }

    void counterIs(LaneBlock block) {
        counter = block;
    }

    KeepersHands hands() {
        return hands;
    }

    boolean occupied() {
        return fold.occupancy().occupied();
    }

    /** When the trap was last emptied, Unix milliseconds; far in the past when it never was. */
    long emptiedAt() {
        return fold.occupancy().emptiedAt();
    }

    /** Whether nobody lived in the trap from one time to another, Unix milliseconds. */
    boolean emptyBetween(long fromMillis, long toMillis) {
        return emptiedAt() < fromMillis && !(occupied() && fold.occupancy().onsetMillis() < toMillis);
    }

    /** Whether a swarm that moved in was still settling at that time. */
    boolean fillingAt(long timeMillis) {
        return fold.occupancy().occupied()
                && Math.abs(timeMillis - fold.occupancy().onsetMillis()) < 3 * 3_600_000L;
    }

    /** Takes samples that one message brought and folds whatever they change. */
    List<Finding> take(
            String fromNode, Fitted nowFitted, List<Sample> samples, Instant received, Surroundings surroundings) {
        node = fromNode;
        if (nowFitted != fitted) {
            fitted = nowFitted;
            fold = new TrapFold(fitted);
            states.clear();
        }
        long changed = Long.MAX_VALUE;
        for (Sample sample : samples) {
            changed = Math.min(changed, series.add(sample));
        }
        lastHeard = received.isAfter(lastHeard) ? received : lastHeard;
        List<Finding> findings = new ArrayList<>();
        if (unheard) {
            unheard = false;
            enter(
                    Signal.plain(Kind.UNHEARD, Stage.ENDED, newest, received.toEpochMilli(), "Heard again"),
                    received,
                    findings);
        }
        if (changed != Long.MAX_VALUE) {
            fold(changed, received, surroundings, findings);
            if (followsClosings) {
                lookAfterTheVisits(changed, received, findings);
            }
        }
        newest = series.size() == 0 ? newest : series.timeMillis(series.size() - 1);
        return findings;
    }

    /** Takes all visits to the trap that stand, and looks at its past again under them. */
    List<Finding> visited(List<Visit> standing, Instant now, Surroundings surroundings) {
        KeepersHands before = hands;
        hands = KeepersHands.of(standing);
        List<Finding> findings = new ArrayList<>();
        long changed = hands.firstDifference(before);
        if (changed <= fold.foldedUntil() && series.size() > 0 && changed > series.timeMillis(0)) {
            fold(changed - BEFORE_A_VISIT_MILLIS, now, surroundings, findings);
        }
        if (followsClosings) {
            lookAfterTheVisits(Long.MIN_VALUE + 1, now, findings);
        }
        return findings;
    }

    private void lookAfterTheVisits(long changed, Instant received, List<Finding> findings) {
        List<Finding> told = ledger.standing();
        List<Signal> signals = new ArrayList<>(ClosedWatch.look(series, hands.visits(), told));
        signals.addAll(VanishedWeight.look(series, changed, hands.visits(), told));
        signals.forEach(signal -> enter(signal, received, findings));
    }

    private void fold(long changed, Instant received, Surroundings surroundings, List<Finding> findings) {
        boolean again = changed <= fold.foldedUntil();
        long oldEnd = fold.foldedUntil();
        if (again) {
            goBackBefore(changed);
        }
        Occupancy before = fold.occupancy();
        Map<Kind, Long> held = Map.of(
                Kind.MOVE_IN,
                before.occupied() ? before.onsetMillis() : 0,
                Kind.ROBBING,
                fold.robbing().onsetMillis());
        long from = fold.foldedUntil();
        List<Signal> raised = new ArrayList<>();
        List<Signal> signals = new ArrayList<>();
        for (int i = series.firstAfter(from); i < series.size(); i++) {
            fold.step(series, i, inForce.thresholds(), surroundings, signals);
            for (Signal signal : signals) {
                if (signal.stage() == Stage.RAISED) {
                    raised.add(signal);
                }
                enter(signal, received, findings);
            }
            signals.clear();
            remember();
        }
        if (again) {
            findings.addAll(ledger.withdrawUnrepeated(from, oldEnd, held, raised, received));
        }
    }

    private void enter(Signal signal, Instant received, List<Finding> findings) {
        ledger.enter(signal, node, received, inForce.version()).ifPresent(findings::add);
    }

    private void goBackBefore(long time) {
        while (!states.isEmpty() && states.peekLast().foldedUntil() >= time) {
            states.removeLast();
        }
        fold = states.isEmpty() ? new TrapFold(fitted) : states.peekLast().copy();
    }

    private void remember() {
        if (states.isEmpty() || fold.foldedUntil() - states.peekLast().foldedUntil() >= BETWEEN_STATES_MILLIS) {
            states.addLast(fold.copy());
            if (fold.foldedUntil() - states.peekFirst().foldedUntil() > KEPT_MILLIS) {
                states.removeFirst();
            }
        }
    }

    /** Notices silence on the clock of receipt, since the samples' own time stops with the samples. */
    List<Finding> tick(Instant now) {
        List<Finding> findings = new ArrayList<>();
        if (!unheard
                && lastHeard != Instant.MIN
                && lastHeard
                        .plusMillis((long) (inForce.thresholds().unheardHours() * 3_600_000))
                        .isBefore(now)) {
            unheard = true;
            String said = "Nothing heard for " + length(Duration.between(lastHeard, now));
            enter(Signal.plain(Kind.UNHEARD, Stage.RAISED, newest, now.toEpochMilli(), said), now, findings);
        }
        return findings;
    }

    private static String length(Duration silence) {
        if (silence.toHours() < 2) {
            return silence.toMinutes() + " min";
        }
        return silence.toHours() < 48 ? silence.toHours() + " h" : silence.toDays() + " days";
    }

    /** How near a stretch of the kept past came to each kind. */
    List<Nearest> nearest(Instant from, Instant until, Surroundings surroundings) {
        return new WhyNot(series, fitted, inForce.thresholds(), surroundings, ledger.findings()).between(from, until);
    }

    Condition condition() {
        return VisitedCondition.of(hands.visits(), fold.occupancy()).orElseGet(this::sensed);
    }

    /** The chance of a swarm, while the trap is scouted. */
    Optional<Forecast> forecast() {
        return fold.on(Kind.SCOUTING) && series.size() > 0
                ? Optional.of(Forecast.at(series, series.size() - 1))
                : Optional.empty();
    }

    private Condition sensed() {
        if (unheard) {
            return Condition.UNHEARD;
        }
        if (fold.occupancy().occupied()) {
            boolean filling = fold.foldedUntil() - fold.occupancy().onsetMillis() < 3_600_000L;
            return filling ? Condition.FILLING : Condition.OCCUPIED;
        }
        if (fold.robbing().counted(fold.foldedUntil())) {
            return Condition.ROBBED;
        }
        if (fold.on(Kind.DISTURBED)) {
            return Condition.DISTURBED;
        }
        if (fold.on(Kind.SCOUTING)) {
            return Condition.SCOUTED;
        }
        if (fold.robbing().on()) {
            return Condition.ROBBED;
        }
        return fold.on(Kind.FAULTY) ? Condition.FAULTY : Condition.QUIET;
    }
}
