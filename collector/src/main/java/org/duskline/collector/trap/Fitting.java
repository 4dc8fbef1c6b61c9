package org.duskline.collector.trap;

import java.time.Instant;

/**
 * Which node hung in which trap, from when to when.
 *
 * @param node the hardware's own name
 * @param trap the trap's name
 * @param fitted what the node senses there
 * @param from first instant, inclusive
 * @param until first instant after it was taken away; {@link Instant#MAX} while it still hangs there
 */
public record Fitting(String node, String trap, Fitted fitted, Instant from, Instant until) {
    public Fitting {
        if (!from.isBefore(until)) {
            throw new IllegalArgumentException("The fitting of node " + node + " in " + trap + " ends (" + until
                    + ") before it begins (" + from + ").");
        }
    }

    /** Whether the node hung there at that instant. */
    public boolean covers(Instant time) {
        return !time.isBefore(from) && time.isBefore(until);
    }
}
