package org.duskline.collector.instruction;

import org.duskline.collector.wire.Acknowledgement;
import org.duskline.collector.wire.Acknowledgement.QuickMode;

/**
 * How a node is to work. The ranges are those of the wire contract; a node refuses anything else.
 *
 * @param periodSeconds time between samples in quiet hours, 10 to 3600
 * @param quickPeriodSeconds time between samples in quick mode, 5 to 600 and at most {@code periodSeconds}
 * @param quick when it is quick
 * @param tare number of the tare asked for, from 0; a node tares once when it differs from the number that it carried
 *     out last, and takes the first that it ever hears as the number to begin with
 */
public record NodeSettings(long periodSeconds, long quickPeriodSeconds, QuickMode quick, long tare) {
    /** What a node does that was never told anything. */
    public static final NodeSettings USUAL = new NodeSettings(120, 30, QuickMode.AUTO, 0);

    public static final long SHORTEST_PERIOD = 10;
    public static final long LONGEST_PERIOD = 3600;
    public static final long SHORTEST_QUICK_PERIOD = 5;
    public static final long LONGEST_QUICK_PERIOD = 600;

    public NodeSettings {
        within("The time between samples", periodSeconds, SHORTEST_PERIOD, LONGEST_PERIOD);
        within("The time between quick samples", quickPeriodSeconds, SHORTEST_QUICK_PERIOD, LONGEST_QUICK_PERIOD);
        if (quickPeriodSeconds > periodSeconds) {
            throw new IllegalArgumentException("The time between quick samples (" + quickPeriodSeconds
                    + " s) is longer than that between quiet ones (" + periodSeconds
                    + " s). Make it at most as long; equal means that quick changes nothing.");
        }
        if (tare < 0 || tare > Integer.MAX_VALUE) {
            throw new IllegalArgumentException("The number of a tare runs from 0 to " + Integer.MAX_VALUE + ".");
        }
    }

    private static void within(String what, long seconds, long least, long most) {
        if (seconds < least || seconds > most) {
            throw new IllegalArgumentException(
                    what + " takes " + least + " to " + most + " seconds, not " + seconds + ".");
        }
    }

    /** What a node says is in force; the usual where it says nothing, or nothing possible. */
    static NodeSettings of(Acknowledgement said) {
        try {
            return new NodeSettings(
                    said.periodSeconds().orElse(USUAL.periodSeconds),
                    said.quickPeriodSeconds().orElse(USUAL.quickPeriodSeconds),
                    said.quick().orElse(USUAL.quick),
                    said.tare().orElse(USUAL.tare));
        } catch (IllegalArgumentException outOfRange) {
            return new NodeSettings(
                    USUAL.periodSeconds,
                    USUAL.quickPeriodSeconds,
                    USUAL.quick,
                    said.tare().orElse(USUAL.tare));
        }
    }

    /** The same with one tare more. */
    public NodeSettings taredOnceMore() {
        return new NodeSettings(periodSeconds, quickPeriodSeconds, quick, tare + 1);
    }
}
