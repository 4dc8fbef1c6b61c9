package org.duskline.analyzer.finding;

import java.util.Locale;

/** The condition of a trap, as shown on the line. */
public enum Condition {
    QUIET,
    SCOUTED,
    FILLING,
    OCCUPIED,
    CLOSED,
    COLLECTED,
    ROBBED,
    DISTURBED,
    UNHEARD,
    FAULTY;

    public String wireName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
