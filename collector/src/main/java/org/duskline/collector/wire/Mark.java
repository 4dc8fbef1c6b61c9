package org.duskline.collector.wire;

/** What was doubtful about a sample. Absurd values stay stored as they came, and do not reach a detector. */
public enum Mark {
    /** The node's clock was wrong or never set; the time was taken from the receipt. */
    CLOCK_REPAIRED(0),
    /** The time was relative to the receipt, as for a node without a clock. */
    RELATIVE_TIME(1),
    ABSURD_COUNT(2),
    ABSURD_WEIGHT(3),
    ABSURD_CELL(4),
    ABSURD_BOX(5),
    ABSURD_HUMIDITY(6),
    ABSURD_BATTERY(7),
    ABSURD_WEIGHT_SPREAD(8);

    private final int place;

    /** The place is stored with the samples, so it never changes. */
    Mark(int place) {
        this.place = place;
    }

    public int bit() {
        return 1 << place;
    }
}
