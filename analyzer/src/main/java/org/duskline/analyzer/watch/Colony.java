package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Locale;
import java.util.Map;
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
 * One colony in a trap, from the alarm that told of its swarm to its end: what it weighs, how sure it is by now, whether it
 * leaves, and whether it is still there. Part of the fold's state, so it can be copied.
 */
final class Colony implements Cloneable {
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
    private final long onset;
    private final long raisedAt;
    private final double boxKg;
    private final double raisedLogOdds;
    private double baseKg;
    private double swarmKg;
    private boolean arrived;
    private boolean strengthened;
    private boolean left;
    private boolean ended;
    private double logOdds;
    private Emptiness emptiness = new Emptiness();

    /** @param raisedAt when its swarm is told, Unix milliseconds */
    Colony(Fitted fitted, MoveInCase moveIn, long raisedAt) {
        this.fitted = fitted;
        this.onset = moveIn.onsetMillis();
        this.raisedAt = raisedAt;
        this.boxKg = moveIn.baseKg();
        this.baseKg = boxKg;
        this.swarmKg = moveIn.size().kg();
        this.logOdds = moveIn.logOdds();
        this.raisedLogOdds = logOdds;
    }

    Colony copy() {
        try {
            Colony copy = (Colony) clone();
            copy.emptiness = emptiness.copy();
            return copy;
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    boolean livesHere() {
        return !ended;
    }

    long onsetMillis() {
        return onset;
    }

    /** Whether it was told for having stayed some days, not for its coming. */
    boolean toldLate() {
        return raisedAt - onset > Suspect.LATE_MILLIS;
    }

    /** Where the box hung before it came, kg; NaN where nobody knows. */
    double boxKg() {
        return boxKg;
    }

    /** What its swarm weighed, kg, as far as it is known. */
    double swarmKg() {
        return swarmKg;
    }

    /** What a sample shows of its weight and of its coming and going. */
    void look(TrapSeries series, int at, Thresholds thresholds, Surroundings surroundings, List<Signal> out) {
        long now = series.timeMillis(at);
        weigh(series, at, now);
        arrive(series, at, surroundings, out);
        depart(series, at, now, thresholds, surroundings, out);
    }

    /** Whether most of its weight is there; without a scale, whether bees have flown since the alarm. */
    boolean stillThere(TrapSeries series, int at) {
        if (weighed()) {
            return series.median(Quantity.WEIGHT, at - 4, at) > baseKg + 0.5 * swarmKg;
        }
        int dawn = Math.max(0, series.lastAt(raisedAt));
        return series.totalIn(at) - series.totalIn(dawn) > 50;
    }

    /** Takes what speaks for it or against: it is borne out once, and given up below even odds. */
    void learn(Evidence evidence, long now, List<Signal> out) {
        logOdds += evidence.logOdds();
        if (logOdds < 0) {
            end(now, strengthened ? Stage.ENDED : Stage.WITHDRAWN, evidence.said(), out);
        } else if (!strengthened && logOdds > raisedLogOdds + BORNE_OUT) {
            strengthened = true;
            Optional<SwarmSize> size = weighed() ? Optional.of(ArrivedBees.weighed(swarmKg)) : Optional.empty();
            out.add(change(Stage.STRENGTHENED, now, evidence.said() + weightWords(), size));
        }
    }

    /** Ends it where a sample shows that nobody lives here any more. */
    void endWhereEmpty(TrapSeries series, int at, long disturbedAt, Surroundings surroundings, List<Signal> out) {
        if (!empty(series, at, disturbedAt, surroundings)) {
            return;
        }
        long now = series.timeMillis(at);
        boolean hands = now - disturbedAt < HANDS_EXPLAIN;
        if (left) {
            end(now, Stage.ENDED, "The colony has left", out);
        } else if (hands) {
            end(now, Stage.ENDED, "Hands were at the trap and the weight is gone: collected", out);
        } else if (strengthened) {
            end(now, Stage.ENDED, "The trap is empty again", out);
        } else {
            logOdds = GONE_AGAIN;
            end(now, Stage.WITHDRAWN, "It did not stay: the trap is as before", out);
        }
    }

    /** @param now Unix milliseconds */
    void end(long now, Stage stage, String why, List<Signal> out) {
        ended = true;
        out.add(change(stage, now, why, Optional.empty()));
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
                Kind.MOVE_IN, stage, onset, now, 1 / (1 + Math.exp(-logOdds)), why, List.of(), Map.of(), size);
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
                    Map.of(),
                    Optional.empty()));
        }
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
}
