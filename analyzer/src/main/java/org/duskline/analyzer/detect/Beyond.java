package org.duskline.analyzer.detect;

/** Evidence from beyond the trap's own hour, each of which detection can be run without to show what it buys. */
public enum Beyond {
    /** The line as its own control: what the other scales did in the same minutes, and rain on the line. */
    NEIGHBOURS("the line as control"),
    /** The box held warm through the night. */
    WARMTH("the warmth of the box"),
    /** Scouts elsewhere fall silent when their swarm has chosen. */
    SILENCE("scouts elsewhere"),
    /** The evening and the day after: it stayed, it forages. */
    DAYS_AFTER("dusk and the day after");

    private final String words;

    Beyond(String words) {
        this.words = words;
    }

    /** In the keeper's words. */
    public String words() {
        return words;
    }
}
