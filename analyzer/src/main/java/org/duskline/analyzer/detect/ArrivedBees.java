package org.duskline.analyzer.detect;

import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.analyzer.series.TrapSeries;

/** How big a swarm is, from what the scale gained or, without one, from what the counter saw go in. */
public final class ArrivedBees {
    /** Mass of a bee on arrival, kg: between gorged, 0.13 g, and empty, 0.09 g (Mitchell 1970). */
    private static final double KG_PER_BEE = 0.00012;

    private ArrivedBees() {}

    /** From the scale's gain, kg. */
    public static SwarmSize weighed(double gainKg) {
        double spread = 0.05 + 0.12 * gainKg;
        return new SwarmSize(gainKg, Math.max(0, gainKg - spread), gainKg + spread, bees(gainKg));
    }

    /** From what a counter saw go in and out between two moments. */
    public static SwarmSize counted(TrapSeries series, long fromMillis, int to, Surroundings surroundings) {
        double net = 0;
        for (int i = Math.max(1, series.firstAfter(fromMillis)); i <= to; i++) {
            net += series.totalIn(i) - series.totalIn(i - 1) - series.totalOut(i) + series.totalOut(i - 1);
        }
        return counted(Math.max(0, net), LaneLoss.netIn(series, fromMillis, to, surroundings.counterBlindSeconds()));
    }

    /**
     * From the best there is.
     *
     * @param gainKg gain on the scale, NaN without one
     * @param netIn net bees inward
     * @param enteredNet the same with what blind lanes lost put back, NaN where nobody said how many lanes there are
     */
    static SwarmSize size(double gainKg, double netIn, double enteredNet) {
        return Double.isNaN(gainKg) ? counted(netIn, enteredNet) : weighed(gainKg);
    }

    private static SwarmSize counted(double netIn, double enteredNet) {
        if (!Double.isNaN(enteredNet)) {
            // With the lanes' losses put back what is left are bees that loitered, turned, or came two abreast.
            double kg = enteredNet / 0.9 * KG_PER_BEE;
            return new SwarmSize(kg, 0.8 * enteredNet * KG_PER_BEE, enteredNet / 0.55 * KG_PER_BEE, bees(kg));
        }
        // Counters see a fifth to two thirds of a rush as net bees inward (common practice).
        double kg = netIn / 0.4 * KG_PER_BEE;
        return new SwarmSize(kg, netIn / 0.7 * KG_PER_BEE, netIn / 0.2 * KG_PER_BEE, bees(kg));
    }

    private static int bees(double kg) {
        return (int) Math.round(kg / KG_PER_BEE / 100) * 100;
    }
}
