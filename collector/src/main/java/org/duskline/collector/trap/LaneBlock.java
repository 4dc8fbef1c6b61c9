package org.duskline.collector.trap;

import java.time.Duration;
import java.time.Instant;

/**
 * What a node's entrance counter is made of, from a day on: so many lanes side by side, each blind for a while after
 * every bee that it counts. With N bees passing and M counted a second over L lanes that are used alike,
 * {@code N = M / (1 - M tau / L)} (non-paralyzable; Knoll, Radiation Detection and Measurement, chapter 4).
 *
 * @param node the hardware's own name
 * @param from first instant it holds for; it holds until the node's next one
 * @param lanes lanes, from 1
 * @param deadTime tau, how long one lane is blind after a bee
 */
public record LaneBlock(String node, Instant from, int lanes, Duration deadTime) {
    /** Measured with the virtual entrance for a lane one bee wide (hardware-notes/counting.md, make count-loss). */
    public static final Duration USUAL_DEAD_TIME = Duration.ofMillis(89);

    public static final int MOST_LANES = 64;

    public LaneBlock {
        if (lanes < 1 || lanes > MOST_LANES) {
            throw new IllegalArgumentException(
                    "The counter of node " + node + " takes 1 to " + MOST_LANES + " lanes, not " + lanes + ".");
        }
        if (deadTime.isNegative() || deadTime.compareTo(Duration.ofSeconds(10)) > 0) {
            throw new IllegalArgumentException("The dead time of a lane of node " + node + " takes 0 to 10,000 ms, not "
                    + deadTime.toMillis() + ".");
        }
    }
}
