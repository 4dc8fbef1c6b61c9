package org.duskline.collector.trap;

/** What a trap is fitted with. */
public enum Fitted {
    BOTH,
    COUNTER,
    SCALE;

    /** Whether bees are counted at the entrance. */
    public boolean hasCounter() {
        return this != SCALE;
    }

    /** Whether the box is weighed. */
    public boolean hasScale() {
        return this != COUNTER;
    }
}
