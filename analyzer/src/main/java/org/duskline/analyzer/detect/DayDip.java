package org.duskline.analyzer.detect;

import java.util.Locale;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.stats.Robust;

/**
 * By how much a box was lighter by day than in the nights around it: foragers are out by day and back by dusk (Meikle and
 * others 2018, doi 10.1371/journal.pone.0197589; Holst and Meikle 2018, Insects 9, 176). Sun and drying make dips as well,
 * but at the other scales too.
 *
 * @param kg the dip of this box
 * @param othersKg the dip of the other boxes on the same day, their median
 * @param othersScatterKg how much those differ, as a standard deviation, robust
 */
public record DayDip(double kg, double othersKg, double othersScatterKg) {
    /** A tenth to a quarter of the bees are out at a time, on fair days; common practice. Boxes by day show the lower end. */
    private static final double OUT_SHARE = 0.11;

    private static final double OUT_SHARE_SCATTER = 0.05;

    /** On one day in four they stay at home, for cold, wind or want of forage; own choice. */
    private static final double AT_HOME = 0.25;

    private static final double LEAST_SCATTER_KG = 0.03;

    /** Density of dips that nothing explains, a kilogram; own choice. */
    private static final double UNEXPLAINED = 0.15;

    /** How much more this box dipped than the others. */
    public double beyondKg() {
        return kg - othersKg;
    }

    /** What the day says for or against so many kilograms of bees living there, in a box with such an empty usual. */
    public Evidence evidence(double beesKg, Usual usual) {
        double beyond = beyondKg() - usual.beyondKg();
        double scatter = Math.max(LEAST_SCATTER_KG, Math.hypot(othersScatterKg, usual.scatterKg()));
        double forage = normal(beyond, OUT_SHARE * beesKg, Math.hypot(scatter, OUT_SHARE_SCATTER * beesKg));
        double nothing = normal(beyond, 0, scatter);
        double lived = (1 - AT_HOME) * forage + AT_HOME * nothing;
        double nats = Math.log((lived + UNEXPLAINED) / (nothing + UNEXPLAINED));
        return new Evidence(
                String.format(
                        Locale.ROOT,
                        "%s: by day the box was %.2f kg lighter than at night, sun and drying aside",
                        beyond > 0 && nats > 0 ? "Foragers are out" : "No foragers",
                        Math.max(0, beyond)),
                nats);
    }

    private static double normal(double value, double mean, double deviation) {
        double away = (value - mean) / deviation;
        return Math.exp(-0.5 * away * away) / (deviation * Math.sqrt(2 * Math.PI));
    }

    /**
     * How an empty box dips beside the others: its lid may dry faster, its scale lie in the sun.
     *
     * @param beyondKg how much more than they, the median of its days
     * @param scatterKg from day to day, as a standard deviation, robust
     */
    public record Usual(double beyondKg, double scatterKg) {
        private static final int ENOUGH_DAYS = 3;

        /** Boxes differ about so much from each other; own choice. */
        private static final double UNKNOWN_SCATTER_KG = 0.08;

        /** From how much more than the others it dipped on its empty days; where those are too few it may be anything. */
        public static Usual of(double... beyondKg) {
            return beyondKg.length < ENOUGH_DAYS
                    ? new Usual(0, UNKNOWN_SCATTER_KG)
                    : new Usual(Robust.median(beyondKg), Robust.mad(beyondKg));
        }
    }
}
