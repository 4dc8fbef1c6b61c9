package org.duskline.analyzer.watch;

import java.util.Optional;
import org.duskline.analyzer.detect.MoveInCase;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/**
 * A gain on a lone scale that may have been a swarm or a zero point that jumped, as one between two samples or in a
 * silence: whether foragers fly on the days after decides. Part of the fold's state.
 */
final class Suspect implements Cloneable {
    /** Under these odds a gain is not worth remembering; natural logarithm, own choice. */
    private static final double LEAST_LOG_ODDS = -2;

    /** Foragers must say so much, in nats: a jump happens far more often than a swarm; own choice. */
    private static final double FORAGERS_SAY = 2.5;

    private static final long REMEMBERED_MILLIS = 5 * 24 * 3_600_000L;

    private MoveInCase held;
    private double foragersSaid;

    Suspect copy() {
        try {
            return (Suspect) clone();
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    boolean isHeld() {
        return held != null;
    }

    /** Remembers the likeliest gain of late, and forgets one that went again, is long past or was looked at. */
    void see(Optional<MoveInCase> gain, TrapSeries series, int at, double leastKg, Surroundings surroundings) {
        if (held != null && !stands(series, at, surroundings)) {
            held = null;
        }
        gain.filter(each -> each.logOdds() > LEAST_LOG_ODDS && each.gainKg() > leastKg)
                .filter(each -> held == null || each.logOdds() > held.logOdds())
                .ifPresent(each -> {
                    held = each;
                    foragersSaid = 0;
                });
    }

    private boolean stands(TrapSeries series, int at, Surroundings surroundings) {
        long now = series.timeMillis(at);
        return now - held.onsetMillis() < REMEMBERED_MILLIS
                && !surroundings.keeperEmptied(held.onsetMillis(), now)
                && !(series.median(Quantity.WEIGHT, at - 4, at) < held.baseKg() + 0.5 * held.gainKg());
    }

    /** The case, once the days after have made it as sure as an alarm must be. */
    Optional<MoveInCase> borneOut(long now, ForagerDays days, double enough, Surroundings surroundings) {
        Optional<Evidence> day = days.evidence(now, held.onsetMillis(), held.gainKg(), surroundings);
        if (day.isEmpty()) {
            return Optional.empty();
        }
        held = held.and(day.get());
        foragersSaid += day.get().logOdds();
        return Optional.of(held).filter(each -> foragersSaid >= FORAGERS_SAY && each.logOdds() >= enough);
    }
}
