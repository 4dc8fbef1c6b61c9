package org.duskline.analyzer.detect;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.trap.Fitted;

/**
 * The case for a swarm that came while nothing was heard and whose samples are lost: counters go on counting through a
 * silence, so the bees that stayed inside stand in the totals on both sides of it, and the scale's level with them. A
 * scale alone is not believed at once: who mends a silent node also handles the box.
 */
public final class SilentArrival {
    private static final long MINUTE = 60_000L;
    private static final long SILENCE = 45 * MINUTE;
    /** What a node stored up while out of range comes within this time, if it comes; own choice. */
    private static final long SETTLED = 30 * MINUTE;

    private static final long LOOKED_BACK = 120 * MINUTE;

    /** A swarm within a given silence of some hours is a hundred times likelier than within twenty minutes. */
    private static final double PRIOR = -3.5;

    private SilentArrival() {}

    /** Weighs the case some minutes after a silence ended; empty at all other times. The onset is when it was heard. */
    public static Optional<MoveInCase> at(TrapSeries series, int at, Fitted fitted, Surroundings surroundings) {
        int heard = fitted.hasCounter() ? silenceEnd(series, at) : -1;
        if (heard < 1 || series.timeMillis(at) - series.timeMillis(heard) < SETTLED) {
            return Optional.empty();
        }
        double in = series.totalIn(heard) - series.totalIn(heard - 1);
        double out = series.totalOut(heard) - series.totalOut(heard - 1);
        double net = in - out;
        if (net < 150) {
            return Optional.empty();
        }
        Odds odds = new Odds(PRIOR);
        odds.add(
                Odds.through(Math.log(net), Math.log(150), 0, Math.log(400), 3, Math.log(1000), 5),
                "%.0f more in than out while nothing was heard",
                net);
        double base = series.median(Quantity.WEIGHT, heard - 5, heard - 1);
        double gain = fitted.hasScale() ? series.median(Quantity.WEIGHT, heard, at) - base : Double.NaN;
        double asymmetry = net / Math.max(1, in + out);
        // A colony's own days thin the share out; counters that differ by a twentieth do the like (photo gates
        // held in to out within 5 % in most trials of 2021-22; common practice).
        double thinned = Double.isNaN(gain) ? -4 : -1.5;
        odds.add(
                Odds.through(asymmetry, 0.03, thinned, 0.08, 0, 0.25, 2, 0.95, 2, 0.98, -4),
                "%.0f %% of all crossings are net inward",
                100 * asymmetry);
        if (!Double.isNaN(gain)) {
            odds.add(Odds.through(gain, 0.05, -5, 0.2, 0, 0.5, 3, 5, 3, 6, -4), "%+.2f kg since before it", gain);
            double grams = 1000 * gain / net;
            odds.add(
                    Odds.through(grams, 0.02, -2, 0.06, 1.5, 1.5, 1.5, 4, -1, 10, -4),
                    "%.2f g gained for each bee more in than out",
                    grams);
        }
        long before = series.timeMillis(heard - 1);
        if (surroundings.keeperEmptied(before, series.timeMillis(at))) {
            odds.add(-8, "the keeper emptied the trap since");
        }
        return Optional.of(moveIn(series, heard, at, odds, Rival.RESTART, gain, net, base));
    }

    private static MoveInCase moveIn(
            TrapSeries series, int heard, int at, Odds odds, Rival mostly, double gain, double net, double base) {
        Instant before = Instant.ofEpochMilli(series.timeMillis(heard - 1));
        Instant now = Instant.ofEpochMilli(series.timeMillis(at));
        return new MoveInCase(
                series.timeMillis(heard),
                odds.logOdds(),
                gain,
                net,
                Double.NaN,
                base,
                Duration.between(before, now).toMinutes(),
                odds.weightiestFirst(),
                rivals(odds.probability(), mostly));
    }

    /**
     * The same by a scale alone: never sure enough to be told, since who mends a silent node also handles the box. Foragers on
     * the days after may bear it out.
     */
    public static Optional<MoveInCase> weighed(TrapSeries series, int at, Surroundings surroundings) {
        int heard = silenceEnd(series, at);
        if (heard < 1 || series.timeMillis(at) - series.timeMillis(heard) < SETTLED) {
            return Optional.empty();
        }
        long before = series.timeMillis(heard - 1);
        double base = series.median(Quantity.WEIGHT, heard - 5, heard - 1);
        double gain = series.median(Quantity.WEIGHT, heard, at) - base;
        Odds odds = new Odds(PRIOR);
        odds.add(Odds.through(gain, 0.2, -5, 0.5, 3, 4.5, 3, 6, -4), "%+.2f kg since before it was silent", gain);
        double others = surroundings.neighboursGainKg(before, series.timeMillis(heard));
        if (!Double.isNaN(others)) {
            odds.add(
                    Odds.through(others / Math.max(gain, 0.05), 0.03, 0, 0.1, -1, 0.3, -5),
                    "the other scales gained %+.2f kg in that time",
                    others);
        }
        return Optional.of(moveIn(series, heard, at, odds, Rival.TARE_SHIFT, gain, Double.NaN, base));
    }

    /** The index at which a silence ended lately; -1 where there was none. */
    private static int silenceEnd(TrapSeries series, int at) {
        long now = series.timeMillis(at);
        for (int i = at; i > 0 && now - series.timeMillis(i) < LOOKED_BACK; i--) {
            if (series.timeMillis(i) - series.timeMillis(i - 1) > SILENCE) {
                return i;
            }
        }
        return -1;
    }

    private static Map<Rival, Double> rivals(double swarm, Rival mostly) {
        EnumMap<Rival, Double> shares = new EnumMap<>(Rival.class);
        shares.put(Rival.SWARM, swarm);
        shares.put(mostly, 0.6 * (1 - swarm));
        shares.put(Rival.HANDS, 0.4 * (1 - swarm));
        return shares;
    }
}
