package org.duskline.analyzer.detect;

import java.util.Map;
import org.duskline.analyzer.finding.Rival;
import org.duskline.collector.trap.Fitted;

/** What a scale says for and against a swarm moving in. */
final class WeightEvidence {
    /** A shower that soaks one box soaks the others by more than so small a share of that; own choice. */
    private static final double SOAKS_ALIKE = 0.04;

    private static final double LEAST_SOAKED_KG = 0.02;

    private WeightEvidence() {}

    /** Bees have a weight: a kilogram that comes with a handful of bees was hands. */
    static void agree(Odds odds, Rush rush, Ramp ramp) {
        double gramsPerBee = 1000 * ramp.gainKg() / Math.max(rush.net(), 1);
        odds.add(
                Odds.through(gramsPerBee, 0.02, -2, 0.08, 1, 1, 1, 3, -1, 8, -6),
                "%.2f g gained for each bee more in than out",
                gramsPerBee);
        if (ramp.kgPerMinute() > 0.3) {
            odds.add(
                    Odds.through(ramp.kgPerMinute(), 0.3, 0, 0.9, -4),
                    "at its steepest %.2f kg a minute",
                    ramp.kgPerMinute());
        }
        if (ramp.swings() > 1) {
            odds.add(-2.0 * Math.min(ramp.swings(), 4), "%d wild swings around it", ramp.swings());
        }
    }

    /** What the ramp itself says, and which rivals it leaves. */
    static void weigh(Odds odds, Map<Rival, Double> against, Ramp ramp, Fitted fitted, Thresholds thresholds) {
        double gain = ramp.gainKg();
        double least = thresholds.smallestSwarmKg();
        boolean counted = fitted.hasCounter();
        double floor = counted ? -6 : -5;
        double size = Odds.through(
                gain,
                Math.max(0.04, 3 * ramp.noiseKg()),
                floor,
                Math.max(0.12, 0.5 * least),
                0,
                least,
                counted ? 3 : 2,
                2.2 * least,
                5,
                4.5,
                5,
                6,
                -4);
        odds.add(size, "%+.2f kg in %.0f min (smallest swarm %.2f)", gain, ramp.minutes(), least);
        if (gain < 0.04) {
            against.put(Rival.GLARE, 0.5);
            return;
        }
        double share = ramp.largestStepShare();
        double jump = ramp.steps() >= 3
                ? Odds.through(share, 0.3, 2, 0.5, 1, 0.75, -2, 0.95, -5)
                : Odds.through(share, 0.6, 0.5, 0.8, -2, 0.95, -4);
        if ((1 - share) * gain > Math.max(0.03, 5 * ramp.noiseKg())) {
            // A zero point jumps in one step and is done; a swarm that came between two samples has stragglers.
            jump = Math.max(jump, -2);
        }
        if (!counted) {
            odds.add(jump, "the largest single step is %.0f %% of it", 100 * share);
            odds.add(
                    Odds.through(ramp.kgPerMinute(), 0.006, -4, 0.012, -1.5, 0.02, 0.5, 0.04, 2, 0.3, 2, 0.9, -2),
                    "at its steepest %.3f kg a minute",
                    ramp.kgPerMinute());
            odds.add(
                    Odds.through(ramp.pathRatio(), 1.2, 1, 2, -0.5, 3, -3, 6, -6),
                    "its path is %.1f times its gain",
                    ramp.pathRatio());
            odds.add(
                    ramp.swings() == 0 ? 0.5 : ramp.swings() == 1 ? -2 : -6, "%d wild swings around it", ramp.swings());
            odds.add(Odds.through(ramp.heldMinutes(), 0, 0, 6, 0, 15, 1.5), "held for %.0f min", ramp.heldMinutes());
        }
        against.put(Rival.TARE_SHIFT, share > 0.7 ? 1.0 : 0.05);
        against.put(Rival.HANDS, ramp.swings() > 0 ? 1.0 : 0.05);
        against.put(Rival.WIND, ramp.pathRatio() > 2 ? 0.5 : 0.02);
    }

    /** What the other scales say to a lone one: a shower reaches one box first, and only time shows whether they follow. */
    static void beside(Odds odds, Ramp ramp, long now, Surroundings surroundings) {
        double least = Math.max(LEAST_SOAKED_KG, SOAKS_ALIKE * ramp.gainKg());
        OtherScales others = surroundings.otherScales(ramp.onsetMillis(), now, least);
        double dry = others.stayedDry((now - ramp.onsetMillis()) / 60_000.0, ramp.kgPerMinute());
        if (others.heard() == 0) {
            odds.add(Math.min(0, dry), "it is not known whether other scales gained too");
        } else {
            odds.add(
                    Odds.through(others.soakedShare(), 0, dry, 0.07, Math.min(dry, -0.5), 0.16, -3, 0.3, -6),
                    "%d of %d other scales gained too",
                    others.soaked(),
                    others.heard());
        }
    }
}
