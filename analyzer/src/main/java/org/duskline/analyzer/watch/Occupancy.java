package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.detect.MoveInCase;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.trap.Fitted;

/**
 * Whether a colony lives in the trap: raised by a move-in, strengthened by a night and by foragers, ended by a departure,
 * by hands that take it away, by emptiness, or by the next swarm. Remembers between two colonies what the empty box was
 * like. Part of the fold's state, so it can be copied.
 */
final class Occupancy implements Cloneable {
    private final Fitted fitted;

    /** The last one that came, gone or not; null before the first. */
    private Colony colony;

    private long emptiedAt = Long.MIN_VALUE / 2;
    private Aftermath aftermath = new Aftermath();
    private Suspect suspect = new Suspect();

    Occupancy(Fitted fitted) {
        this.fitted = fitted;
    }

    Occupancy copy() {
        try {
            Occupancy copy = (Occupancy) clone();
            copy.colony = colony == null ? null : colony.copy();
            copy.aftermath = aftermath.copy();
            copy.suspect = suspect.copy();
            return copy;
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    boolean occupied() {
        return colony != null && colony.livesHere();
    }

    /** When the last colony came, Unix milliseconds; 0 where there was none. */
    long onsetMillis() {
        return colony == null ? 0 : colony.onsetMillis();
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
        if (occupied()) {
            follow(series, at, disturbedAt, thresholds, surroundings, out);
        } else {
            aftermath.learn(series, at, surroundings);
            consider(series, at, thresholds, surroundings, out);
        }
    }

    private void consider(
            TrapSeries series, int at, Thresholds thresholds, Surroundings surroundings, List<Signal> out) {
        double boxKg = colony == null ? Double.NaN : colony.boxKg();
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

    private void follow(
            TrapSeries series,
            int at,
            long disturbedAt,
            Thresholds thresholds,
            Surroundings surroundings,
            List<Signal> out) {
        long now = series.timeMillis(at);
        if (surroundings.keeperEmptied(colony.onsetMillis(), now)) {
            colony.end(now, Stage.ENDED, "The keeper recorded that it was taken away", out);
        } else {
            colony.look(series, at, thresholds, surroundings, out);
            learn(series, at, surroundings, out);
            if (occupied() && !surroundings.keeperShut(now)) {
                colony.endWhereEmpty(series, at, disturbedAt, surroundings, out);
            }
        }
        if (occupied()) {
            succeed(series, at, thresholds, surroundings, out);
        } else {
            emptiedAt = now;
        }
    }

    private void learn(TrapSeries series, int at, Surroundings surroundings, List<Signal> out) {
        long now = series.timeMillis(at);
        long onset = colony.onsetMillis();
        aftermath
                .look(series, at, onset, fitted, colony.stillThere(series, at), surroundings)
                .ifPresent(evidence -> colony.learn(evidence, now, out));
        if (occupied() && fitted == Fitted.SCALE) {
            suspect.foragers()
                    .evidence(now, onset, colony.swarmKg(), surroundings)
                    .ifPresent(evidence -> colony.learn(evidence, now, out));
        }
    }

    private void succeed(
            TrapSeries series, int at, Thresholds thresholds, Surroundings surroundings, List<Signal> out) {
        Newcomers.after(colony.onsetMillis(), series, at, fitted, thresholds, surroundings)
                .ifPresent(moveIn -> {
                    emptiedAt = moveIn.onsetMillis();
                    colony.end(emptiedAt, Stage.ENDED, "Another swarm moves in: the first was taken away", out);
                    begin(moveIn, moveIn.said(), series, at, out);
                });
    }

    private void begin(MoveInCase moveIn, String said, TrapSeries series, int at, List<Signal> out) {
        long now = series.timeMillis(at);
        colony = new Colony(fitted, moveIn, now);
        suspect.forget();
        aftermath.begin(colony.toldLate());
        out.add(new Signal(
                Kind.MOVE_IN,
                Stage.RAISED,
                moveIn.onsetMillis(),
                now,
                1 / (1 + Math.exp(-moveIn.logOdds())),
                said,
                moveIn.evidence(),
                moveIn.rivals(),
                Optional.of(moveIn.size())));
    }
}
