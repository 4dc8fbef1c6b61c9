package org.duskline.collector.trap;

import java.time.Instant;

/**
 * How a node's raw converter counts become kilograms from a day on.
 *
 * @param node the hardware's own name
 * @param from first instant it holds for; it holds until the node's next calibration
 * @param offsetCounts what the converter reads under the empty hanger, counts
 * @param countsPerKg counts for one kilogram more; negative for a cell that is wired the other way round, never 0
 */
public record Calibration(String node, Instant from, double offsetCounts, double countsPerKg) {
    public Calibration {
        if (!Double.isFinite(offsetCounts) || !Double.isFinite(countsPerKg) || countsPerKg == 0) {
            throw new IllegalArgumentException("The calibration of node " + node + " from " + from
                    + " needs a finite offset and a finite number of counts per kilogram other than 0; it has "
                    + offsetCounts + " and " + countsPerKg + ".");
        }
    }

    /** The weight in kg that a raw reading stands for. */
    public double weightKg(double loadCount) {
        return (loadCount - offsetCounts) / countsPerKg;
    }
}
