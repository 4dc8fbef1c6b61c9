package org.duskline.analyzer.detect;

/** Evidence from beyond the trap's own hour, each of which detection can be run without to show what it buys. */
public enum Beyond {
    /** The line as its own control: what the other scales did in the same minutes, and rain on the line. */
    NEIGHBOURS,
    /** The box held warm through the night. */
    WARMTH,
    /** Scouts elsewhere fall silent when their swarm has chosen. */
    SILENCE,
    /** The evening and the day after: it stayed, it forages. */
    DAYS_AFTER
}
