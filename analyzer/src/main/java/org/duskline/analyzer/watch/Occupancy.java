package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.detect.ArrivedBees;
import org.duskline.analyzer.detect.DepartureCase;
import org.duskline.analyzer.detect.MoveInCase;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.trap.Fitted;

/**
 * Whether a colony lives in the trap: raised by a move-in, strengthened by a night and by foragers, ended by a departure,
 * by hands that take it away, or by emptiness. Part of the fold's state, so it can be copied.
 */
final class Occupancy implements Cloneable {
    private static final long MINUTE = 60_000L;
    private static final long HOUR = 60 * MINUTE;

    /** So many nats more than at the alarm, and it counts as borne out. */
    private static final double BORNE_OUT = 2.5;

    /** A swarm walks in within 6 to 35 minutes (common practice). */
    private static final long ALL_IN = 45 * MINUTE;

    /** Hands at the trap explain for so long that the weight is gone. */
    private static final long HANDS_EXPLAIN = 4 * HOUR;

    /** Log odds once the weight or the bees are gone again. */
    private static final double GONE_AGAIN = -3;

    private final Fitted fitted;
    private boolean occupied;
    private long onset;
    private long raisedAt;
    private double baseKg;
    private double boxKg = Double.NaN;
    private double swarmKg;
    private boolean arrived;
    private boolean strengthened;
    private boolean left;
    private long emptiedAt = Long.MIN_VALUE / 2;
    private double logOdds;
    private double raisedLogOdds;
    private Aftermath aftermath = new Aftermath();
    private Emptiness emptiness = new Emptiness();
    private Suspect suspect = new Suspect();

    Occupancy(Fitted fitted) {
        this.fitted = fitted;
    }

    Occupancy copy() {
        try {
            Occupancy copy = (Occupancy) clone();
            copy.aftermath = aftermath.copy();
            copy.emptiness = emptiness.copy();
            copy.suspect = suspect.copy();
            return copy;
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    boolean occupied() {
        return occupied;
    }

    long onsetMillis() {
        return onset;
    }

    boolean settled() {
        return strengthened;
    }

    /** When the trap was last emptied, Unix milliseconds; far in the past when it never was. */
    long emptiedAt() {
        return emptiedAt;
    }

    void step(
            TrapSeries series,
            int at,
            long disturbedAt,
            Thresholds thresholds,
            Surroundings surroundings,
            List<Signal> out) {
        if (occupied) {
            follow(series, at, disturbedAt, thresholds, surroundings, out);
        } else {
            aftermath.learn(series, at, surroundings);
            consider(series, at, thresholds, surroundings, out);
        }
    }

    private void consider(
            TrapSeries series, int at, Thresholds thresholds, Surroundings surroundings, List<Signal> out) {
        Optional<MoveInCase> gain = MoveInCase.at(series, at, fitted, thresholds, surroundings);
        Optional<MoveInCase> sure = Newcomers.at(series, at, fitted, gain, thresholds, surroundings)
                .filter(each -> !Newcomers.isTheBoxHungAgain(each, boxKg));
        if (sure.isPresent()) {
            begin(sure.get(), sure.get().said(), series, at, out);
        } else if (fitted == Fitted.SCALE) {
            suspect.look(gain, boxKg, series, at, thresholds, surroundings)
                    .ifPresent(late -> begin(late, late.saidLate(), series, at, out));
        }
    }

    private void succeed(
            TrapSeries series, int at, Thresholds thresholds, Surroundings surroundings, List<Signal> out) {
        Newcomers.after(onset, series, at, fitted, thresholds, surroundings).ifPresent(moveIn -> {
            vacate(moveIn.onsetMillis(), Stage.ENDED, "Another swarm moves in: the first was taken away", out);
            begin(moveIn, moveIn.said(), series, at, out);
        });
    }

    private void begin(MoveInCase moveIn, String said, TrapSeries series, int at, List<Signal> out) {
        occupied = true;
        onset = moveIn.onsetMillis();
        raisedAt = series.timeMillis(at);
        baseKg = moveIn.baseKg();
        boxKg = baseKg;
        swarmKg = moveIn.size().kg();
        arrived = false;
        strengthened = false;
        left = false;
        emptiness = new Emptiness();
        suspect.forget();
        logOdds = moveIn.logOdds();
        raisedLogOdds = logOdds;
        aftermath.begin(raisedAt - onset > Suspect.LATE_MILLIS);
        out.add(new Signal(
                Kind.MOVE_IN,
                Stage.RAISED,
                onset,
                raisedAt,
                1 / (1 + Math.exp(-logOdds)),
                said,
                moveIn.evidence(),
                moveIn.rivals(),
                Optional.of(moveIn.size())));
    }

    private void follow(
            TrapSeries series,
            int at,
            long disturbedAt,
            Thresholds thresholds,
            Surroundings surroundings,
            List<Signal> out) {
        long now = series.timeMillis(at);
        if (surroundings.keeperEmptied(onset, now)) {
            vacate(now, Stage.ENDED, "The keeper recorded that it was taken away", out);
            return;
        }
        weigh(series, at, now);
        arrive(series, at, surroundings, out);
        depart(series, at, now, thresholds, surroundings, out);
        aftermath
                .look(series, at, onset, fitted, stillThere(series, at), surroundings)
                .ifPresent(evidence -> learn(evidence, now, out));
        if (occupied && fitted == Fitted.SCALE) {
            suspect.foragers()
                    .evidence(now, onset, swarmKg, surroundings)
                    .ifPresent(evidence -> learn(evidence, now, out));
        }
        if (occupied && !surroundings.keeperShut(now) && empty(series, at, disturbedAt, surroundings)) {
            vacate(now, disturbedAt, out);
        }
        if (occupied) {
            succeed(series, at, thresholds, surroundings, out);
        }
    }

    private void learn(Evidence evidence, long now, List<Signal> out) {
        logOdds += evidence.logOdds();
        if (logOdds < 0) {
            vacate(now, strengthened ? Stage.ENDED : Stage.WITHDRAWN, evidence.said(), out);
        } else if (!strengthened && logOdds > raisedLogOdds + BORNE_OUT) {
            strengthened = true;
            Optional<SwarmSize> size = weighed() ? Optional.of(ArrivedBees.weighed(swarmKg)) : Optional.empty();
            out.add(change(Stage.STRENGTHENED, now, evidence.said() + weightWords(), size));
        }
    }

    private void arrive(TrapSeries series, int at, Surroundings surroundings, List<Signal> out) {
        long now = series.timeMillis(at);
        if (arrived || now - onset < ALL_IN) {
            return;
        }
        arrived = true;
        SwarmSize size =
                weighed() ? ArrivedBees.weighed(swarmKg) : ArrivedBees.counted(series, onset, at, surroundings);
        out.add(change(
                Stage.ARRIVED,
                now,
                String.format(Locale.ROOT, "A swarm has moved in, about %.1f kg of bees", size.kg()),
                Optional.of(size)));
    }

    private boolean weighed() {
        return fitted.hasScale() && !Double.isNaN(baseKg);
    }

    private String weightWords() {
        return fitted.hasScale() && swarmKg > 0 ? String.format(Locale.ROOT, ", %.2f kg of bees", swarmKg) : "";
    }

    private Signal change(Stage stage, long now, String why, Optional<SwarmSize> size) {
        return new Signal(
                Kind.MOVE_IN,
                stage,
                onset,
                now,
                1 / (1 + Math.exp(-logOdds)),
                why,
                List.of(),
                java.util.Map.of(),
                size);
    }

    /** The swarm is weighed while it enters and for an hour after; later the colony's own gain would be taken for it. */
    private void weigh(TrapSeries series, int at, long now) {
        if (fitted.hasScale() && now - onset < 90 * MINUTE && now - onset > 20 * MINUTE) {
            double gain = series.median(Quantity.WEIGHT, at - 2, at) - baseKg;
            if (gain > swarmKg && gain < 6) {
                swarmKg = gain;
            }
        }
    }

    private void depart(
            TrapSeries series, int at, long now, Thresholds thresholds, Surroundings surroundings, List<Signal> out) {
        if (left || now - raisedAt < 2 * HOUR) {
            return;
        }
        Optional<DepartureCase> found = DepartureCase.at(series, at, fitted, swarmKg, thresholds, surroundings);
        if (found.isPresent() && found.get().logOdds() > Math.log(thresholds.moveInOdds())) {
            left = true;
            DepartureCase departure = found.get();
            out.add(new Signal(
                    Kind.DEPARTURE,
                    Stage.RAISED,
                    departure.onsetMillis(),
                    now,
                    1 / (1 + Math.exp(-departure.logOdds())),
                    "The colony is leaving: " + departure.evidence().get(0).said(),
                    departure.evidence(),
                    java.util.Map.of(),
                    Optional.empty()));
        }
    }

    private boolean stillThere(TrapSeries series, int at) {
        if (weighed()) {
            return series.median(Quantity.WEIGHT, at - 4, at) > baseKg + 0.5 * swarmKg;
        }
        int dawn = Math.max(0, series.lastAt(raisedAt));
        return series.totalIn(at) - series.totalIn(dawn) > 50;
    }

    private boolean empty(TrapSeries series, int at, long disturbedAt, Surroundings surroundings) {
        long now = series.timeMillis(at);
        boolean hands = now - disturbedAt < HANDS_EXPLAIN;
        FlightStep flight = FlightStep.at(series, at, surroundings);
        boolean light = weighed() && light(series, at, flight);
        boolean explained = left || hands || !strengthened || !fitted.hasCounter();
        if (weighed() && hands && Emptiness.handedOut(series, at, disturbedAt, baseKg, swarmKg)) {
            return true;
        }
        if (light && (explained || emptiness.nobodyFliesSinceItIsLight())) {
            return true;
        }
        boolean heavy = weighed() && !left && !emptiness.lost();
        return fitted.hasCounter() && emptiness.idle(flight, now, heavy, disturbedAt);
    }

    /** Whether the swarm's weight has been gone for a while, and not by a scale that jumped. */
    private boolean light(TrapSeries series, int at, FlightStep flight) {
        double level = series.median(Quantity.WEIGHT, at - 4, at);
        boolean light = emptiness.light(series, at, level, baseKg + 0.35 * swarmKg, left);
        if (light && fitted.hasCounter() && emptiness.fliesAsBefore(series, at, flight)) {
            baseKg = level - swarmKg;
            emptiness.heavyAgain();
            return false;
        }
        return light;
    }

    private void vacate(long now, long disturbedAt, List<Signal> out) {
        boolean hands = now - disturbedAt < HANDS_EXPLAIN;
        if (left) {
            vacate(now, Stage.ENDED, "The colony has left", out);
        } else if (hands) {
            vacate(now, Stage.ENDED, "Hands were at the trap and the weight is gone: collected", out);
        } else if (strengthened) {
            vacate(now, Stage.ENDED, "The trap is empty again", out);
        } else {
            logOdds = GONE_AGAIN;
            vacate(now, Stage.WITHDRAWN, "It did not stay: the trap is as before", out);
        }
    }

    private void vacate(long now, Stage stage, String why, List<Signal> out) {
        occupied = false;
        emptiedAt = now;
        out.add(change(stage, now, why, Optional.empty()));
    }
}
