package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.detect.RobbingCase;
import org.duskline.analyzer.detect.StrippedDay;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.trap.Fitted;

/**
 * Robbers at one trap: told while a counter sees them, and on the morning after where only the whole day shows them. Part of
 * the fold's state.
 */
final class Robbing implements Cloneable {
    /** Log odds from which on robbers that a counter sees are told; own choice. */
    static final double LOG_ODDS = Math.log(8);

    /** The same for what a whole day looks like on the next morning, when no more will come to it; own choice. */
    static final double NEXT_MORNING_LOG_ODDS = Math.log(1.5);

    private static final long HOUR = 3_600_000L;
    private static final long UNTIL_NOON_TOMORROW = 20 * HOUR;

    /** Past the next morning's look, so that a second day is no second alert. */
    private static final long UNTIL_THE_NEXT_LOOK = 26 * HOUR;

    private static final long HALF_A_DAY = 12 * HOUR;
    private static final long LONG_AGO = Long.MIN_VALUE / 2;

    private final Fitted fitted;
    private StrippedDays days = new StrippedDays();
    private long onset;
    private long until = LONG_AGO;
    private long counted = LONG_AGO;

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

    /** Whether robbers were there lately. */
    boolean on() {
        return until != LONG_AGO;
    }

    /** Whether the counter saw them so lately that its traffic may be theirs. */
    boolean counted(long now) {
        return on() && now - counted <= UNTIL_NOON_TOMORROW;
    }

    /** When those that were there lately began; 0 where there were none. */
    long onsetMillis() {
        return on() ? onset : 0;
    }

    /** A swarm lives in the trap, or did until just now: nobody robs it. */
    void lived(long now, List<Signal> out) {
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
        if (fitted.hasCounter()) {
            RobbingCase.at(series, at, fitted, emptySinceMillis, thresholds, surroundings)
                    .filter(robbers -> robbers.logOdds() > LOG_ODDS)
                    .ifPresent(robbers -> {
                        raise(robbers, now, out);
                        counted = now;
                        until = Math.max(until, now + UNTIL_NOON_TOMORROW);
                    });
        }
        if (fitted.hasScale()) {
            days.look(series, at, fitted, emptySinceMillis, surroundings)
                    .filter(day -> day.logOdds() > NEXT_MORNING_LOG_ODDS)
                    .filter(day -> on() || counted < day.day().noonMillis() - HALF_A_DAY)
                    .ifPresent(day -> {
                        raise(day, now, out);
                        until = Math.max(until, now + UNTIL_THE_NEXT_LOOK);
                    });
        }
        if (on() && now > until) {
            close(now, "The robbers are gone", out);
        }
    }

    private void raise(RobbingCase seen, long now, List<Signal> out) {
        if (!on()) {
            String said = seen.evidence().get(0).said();
            raise(seen.onsetMillis(), now, seen.logOdds(), "Robbers: " + said, seen.evidence(), seen.rivals(), out);
        }
    }

    private void raise(StrippedDay seen, long now, List<Signal> out) {
        if (!on()) {
            String said = "Probably robbers: " + seen.said();
            raise(seen.day().beganMillis(), now, seen.logOdds(), said, seen.evidence(), seen.rivals(), out);
        }
    }

    private void raise(
            long began,
            long now,
            double logOdds,
            String summary,
            List<Evidence> evidence,
            Map<Rival, Double> rivals,
            List<Signal> out) {
        onset = began;
        double probability = 1 / (1 + Math.exp(-logOdds));
        out.add(new Signal(
                Kind.ROBBING, Stage.RAISED, began, now, probability, summary, evidence, rivals, Optional.empty()));
    }

    private void close(long now, String why, List<Signal> out) {
        if (on()) {
            out.add(Signal.plain(Kind.ROBBING, Stage.ENDED, onset, now, why));
            until = LONG_AGO;
        }
    }
}
