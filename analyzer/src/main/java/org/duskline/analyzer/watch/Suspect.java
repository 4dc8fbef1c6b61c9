package org.duskline.analyzer.watch;

import java.util.Optional;
import java.util.stream.Stream;
import org.duskline.analyzer.detect.MoveInCase;
import org.duskline.analyzer.detect.SilentArrival;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Thresholds;
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

    /** What is told so long after it came was told for having stayed. */
    static final long LATE_MILLIS = 12 * 3_600_000L;

    private static final long REMEMBERED_MILLIS = 5 * 24 * 3_600_000L;

    private MoveInCase held;
    private double foragersSaid;
    private ForagerDays foragers = new ForagerDays();

    Suspect copy() {
        try {
            Suspect copy = (Suspect) clone();
            copy.foragers = foragers.copy();
            return copy;
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    ForagerDays foragers() {
        return foragers;
    }

    void forget() {
        held = null;
    }

    /**
     * Looks at a sample of a box that is thought to be empty; the case, once the days after have made it as sure as an alarm
     * must be.
     *
     * @param gain what the scale shows just now, not sure enough to be told
     * @param boxKg where the box hung before the last swarm, NaN where nobody knows
     */
    Optional<MoveInCase> look(
            Optional<MoveInCase> gain,
            double boxKg,
            TrapSeries series,
            int at,
            Thresholds thresholds,
            Surroundings surroundings) {
        if (held != null && !stands(series, at, surroundings)) {
            held = null;
        }
        Stream.of(gain, SilentArrival.weighed(series, at, surroundings))
                .flatMap(Optional::stream)
                .filter(each -> each.logOdds() > (held == null ? LEAST_LOG_ODDS : held.logOdds()))
                .filter(each -> each.gainKg() > thresholds.smallestSwarmKg())
                .filter(each -> !Newcomers.isTheBoxHungAgain(each, boxKg))
                .forEach(each -> {
                    held = each;
                    foragersSaid = 0;
                });
        if (held == null) {
            foragers.learn(series.timeMillis(at), surroundings);
            return Optional.empty();
        }
        return borneOut(series.timeMillis(at), Math.log(thresholds.moveInOdds()), surroundings);
    }

    private boolean stands(TrapSeries series, int at, Surroundings surroundings) {
        long now = series.timeMillis(at);
        return now - held.onsetMillis() < REMEMBERED_MILLIS
                && !surroundings.keeperEmptied(held.onsetMillis(), now)
                && !(series.median(Quantity.WEIGHT, at - 4, at) < held.baseKg() + 0.5 * held.gainKg());
    }

    private Optional<MoveInCase> borneOut(long now, double enough, Surroundings surroundings) {
        Optional<Evidence> day = foragers.evidence(now, held.onsetMillis(), held.gainKg(), surroundings);
        if (day.isEmpty()) {
            return Optional.empty();
        }
        held = held.and(day.get());
        foragersSaid += day.get().logOdds();
        return Optional.of(held).filter(each -> foragersSaid >= FORAGERS_SAY && each.logOdds() >= enough);
    }
}
