package org.duskline.analyzer.finding;

import java.util.Locale;

/** How far a finding has come. */
public enum Stage {
    /** Said once; more evidence may come. */
    RAISED,
    /** A swarm that was told while it came in is in; from here on its size is known. */
    ARRIVED,
    /** What followed bears it out (the weight stayed past dusk, foragers fly). */
    STRENGTHENED,
    /** It came to its natural end (scouts left, rain dried). */
    ENDED,
    /** It turned out to be something else. */
    WITHDRAWN;

    /** Whether a finding at this stage still stands. */
    public boolean stands() {
        return this != ENDED && this != WITHDRAWN;
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
