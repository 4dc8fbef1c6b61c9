package org.duskline.collector.wire;

/** What was doubtful about a sample. Absurd values stay stored as they came, and do not reach a detector. */
public enum Mark {
    /** The node's clock was wrong or never set; the time was taken from the receipt. */
    CLOCK_REPAIRED,
    /** The time was relative to the receipt, as for a node without a clock. */
    RELATIVE_TIME,
    ABSURD_COUNT,
    ABSURD_WEIGHT,
    ABSURD_CELL,
    ABSURD_BOX,
    ABSURD_HUMIDITY,
    ABSURD_BATTERY,
    ABSURD_WEIGHT_SPREAD;

    public int bit() {
        return 1 << ordinal();
    }
}
