package org.duskline.analyzer.watch;

import java.util.Optional;
import org.duskline.analyzer.detect.MoveInCase;
import org.duskline.analyzer.detect.SilentArrival;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.trap.Fitted;

/** Swarms sure enough to be told, at an empty trap and at one in which a colony is thought to live. */
final class Newcomers {
    private static final long BETWEEN_SWARMS = 26 * 3_600_000L;

    /** Foragers who hurry home add a quarter of a kilogram within half an hour; own choice. */
    private static final double MORE_THAN_FORAGERS_KG = 0.4;

    /** So far below the box's weight a hook is bare; boxes of 40 litres weigh more (common practice). */
    private static final double BARE_HOOK_KG = 2;

    private static final double SAME_BOX_KG = 0.9;

    private Newcomers() {}

    /** One that comes to an empty trap at a sample, or came while nothing was heard. */
    static Optional<MoveInCase> at(
            TrapSeries series,
            int at,
            Fitted fitted,
            Optional<MoveInCase> gain,
            Thresholds thresholds,
            Surroundings surroundings) {
        double enough = Math.log(thresholds.moveInOdds());
        return gain.filter(each -> each.logOdds() >= enough)
                .or(() -> SilentArrival.at(series, at, fitted, surroundings).filter(each -> each.logOdds() >= enough));
    }

    /**
     * A second swarm where one lives already: it does not come to an occupied box, so that the first was taken away
     * unnoticed, which one sensor alone may not see: a box as heavy is hung up, or scouts fly as the colony did.
     *
     * @param firstMillis when the first came
     */
    static Optional<MoveInCase> after(
            long firstMillis,
            TrapSeries series,
            int at,
            Fitted fitted,
            Thresholds thresholds,
            Surroundings surroundings) {
        if (fitted == Fitted.BOTH || series.timeMillis(at) - firstMillis <= BETWEEN_SWARMS) {
            return Optional.empty();
        }
        return MoveInCase.at(series, at, fitted, thresholds, surroundings)
                .filter(each -> each.logOdds() >= Math.log(thresholds.moveInOdds()))
                .filter(each -> !(each.gainKg() < MORE_THAN_FORAGERS_KG));
    }

    /**
     * Whether the weight came back to where the box hung before the last swarm: after a bare hook it is the box.
     *
     * @param boxKg where the box hung, NaN where nobody knows
     */
    static boolean isTheBoxHungAgain(MoveInCase moveIn, double boxKg) {
        double level = moveIn.baseKg() + moveIn.gainKg();
        return moveIn.baseKg() < boxKg - BARE_HOOK_KG && Math.abs(level - boxKg) < SAME_BOX_KG;
    }
}
