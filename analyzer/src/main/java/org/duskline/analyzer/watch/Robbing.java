package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.detect.RobbingCase;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.trap.Fitted;

/** Robbers at one trap: told at once where a counter sees them, the morning after where only the scale does. Part of the fold's state. */
final class Robbing implements Cloneable {
    /** Log odds from which on robbers that a counter sees are told; own choice. */
    static final double LOG_ODDS = Math.log(8);

    /** The same for what a whole day looks like on the next morning, when no more will come to it; own choice. */
    static final double NEXT_MORNING_LOG_ODDS = Math.log(1.5);

    private static final long HOUR = 3_600_000L;
    private static final long UNTIL_NOON_TOMORROW = 20 * HOUR;

    /** Past the next morning's look, so that a second day is no second alert. */
    private static final long UNTIL_THE_NEXT_LOOK = 26 * HOUR;

    /** Robbers that were seen so shortly before are the same. */
    private static final long SAME_DAY = 12 * HOUR;

    private final Fitted fitted;
    private TrapFold.Spell spell = TrapFold.Spell.none();
    private long seenUntil = Long.MIN_VALUE;
    private StrippedDays days = new StrippedDays();

    Robbing(Fitted fitted) {
        this.fitted = fitted;
    }

    Robbing copy() {
        try {
            Robbing copy = (Robbing) clone();
            copy.days = days.copy();
            return copy;
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    boolean on() {
        return spell.on();
    }

    /** A swarm lives in the trap, or did until just now: nobody robs it. */
    void lived(long now, List<Signal> out) {
        days.forget();
        close(now, "It is over", out);
    }

    /** @param emptySinceMillis when the last swarm was gone; long ago where there was none */
    void step(
            TrapSeries series,
            int at,
            long emptySinceMillis,
            Thresholds thresholds,
            Surroundings surroundings,
            List<Signal> out) {
        long now = series.timeMillis(at);
        Optional<RobbingCase> seen = fitted.hasCounter()
                ? RobbingCase.at(series, at, fitted, emptySinceMillis, thresholds, surroundings)
                        .filter(robbers -> robbers.logOdds() > LOG_ODDS)
                : Optional.empty();
        Optional<RobbingCase> yesterday = fitted.hasScale()
                ? days.look(series, at, fitted, emptySinceMillis, surroundings)
                        .filter(robbers -> robbers.logOdds() > NEXT_MORNING_LOG_ODDS)
                : Optional.empty();
        seen.ifPresent(robbers -> see(robbers, "Robbers", now, out));
        yesterday
                .filter(robbers -> seenUntil < robbers.onsetMillis() - SAME_DAY)
                .ifPresent(robbers -> see(robbers, "Robbers were probably there yesterday", now, out));
        if (spell.on() && now - spell.lastSeen() > (fitted.hasCounter() ? UNTIL_NOON_TOMORROW : UNTIL_THE_NEXT_LOOK)) {
            close(now, "The robbers are gone", out);
        }
    }

    private void see(RobbingCase robbers, String said, long now, List<Signal> out) {
        if (!spell.on()) {
            out.add(new Signal(
                    Kind.ROBBING,
                    Stage.RAISED,
                    robbers.onsetMillis(),
                    now,
                    1 / (1 + Math.exp(-robbers.logOdds())),
                    said + ": " + robbers.evidence().get(0).said(),
                    robbers.evidence(),
                    robbers.rivals(),
                    Optional.empty()));
        }
        spell = new TrapFold.Spell(spell.on() ? spell.onset() : robbers.onsetMillis(), now);
        seenUntil = now;
    }

    private void close(long now, String why, List<Signal> out) {
        if (spell.on()) {
            out.add(Signal.plain(Kind.ROBBING, Stage.ENDED, spell.onset(), now, why));
            spell = TrapFold.Spell.none();
        }
    }
}
