package org.duskline.analyzer.watch;

import java.util.Optional;
import org.duskline.analyzer.detect.MoveInCase;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/**
 * A gain on a lone scale that may have been a swarm or a zero point that jumped, as one between two samples or after a
 * stuck reading: whether foragers fly on the days after decides. Part of the fold's state.
 */
final class Suspect implements Cloneable {
    /** Under these odds a gain is not worth remembering; natural logarithm, own choice. */
    private static final double LEAST_LOG_ODDS = -2;

    /** Foragers must say so much, in nats: a jump happens far more often than a swarm; own choice. */
    private static final double FORAGERS_SAY = 2.5;

    private static final long REMEMBERED_MILLIS = 5 * 24 * 3_600_000L;

    private MoveInCase held;
    private ForagerDays days = new ForagerDays();
    private double foragersSaid;

    Suspect copy() {
        try {
            Suspect copy = (Suspect) clone();
            copy.days = days.copy();
            return copy;
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    /** Remembers the likeliest gain of late. */
    void see(MoveInCase gain, double leastKg) {
        if (gain.logOdds() > LEAST_LOG_ODDS
                && gain.gainKg() > leastKg
                && (held == null || gain.logOdds() > held.logOdds())) {
            held = gain;
            days = new ForagerDays();
            foragersSaid = 0;
        }
    }

    /** The case, once the days after have made it sure enough to be told. */
    Optional<MoveInCase> borneOut(TrapSeries series, int at, double enough, Surroundings surroundings) {
        if (held == null) {
            return Optional.empty();
        }
        long now = series.timeMillis(at);
        Optional<Evidence> day = days.next(now, held.onsetMillis(), held.gainKg(), surroundings);
        if (day.isEmpty()) {
            return Optional.empty();
        }
        if (now - held.onsetMillis() > REMEMBERED_MILLIS
                || surroundings.keeperEmptied(held.onsetMillis(), now)
                || series.median(Quantity.WEIGHT, at - 4, at) < held.baseKg() + 0.5 * held.gainKg()) {
            held = null;
            return Optional.empty();
        }
        held = held.and(day.get());
        foragersSaid += day.get().logOdds();
        return Optional.of(held).filter(each -> foragersSaid >= FORAGERS_SAY && each.logOdds() >= enough);
    }
}
