package org.duskline.analyzer.visit;

import java.util.Locale;

/** What a keeper did at a trap. */
public enum VisitKind {
    /** Hung out for the season, or first put up. */
    SET,
    /** Bait was put in or renewed. */
    BAITED,
    /** Only looked at, from below or inside. */
    LOOKED,
    /** The entrance was shut on a swarm. */
    CLOSED,
    /** The entrance was opened again, with the swarm still in: it got too hot, or it is to stay. */
    OPENED,
    /** The swarm was taken away. */
    COLLECTED,
    /** Hung again after a collection, empty. */
    REHUNG,
    /** Taken down for good. */
    TAKEN_DOWN;

    /** Whether no colony is left in the trap after it. */
    public boolean emptiesTheTrap() {
        return this == COLLECTED || this == REHUNG || this == TAKEN_DOWN;
    }

    /** Whether an entrance that was shut on a swarm is so no longer. */
    public boolean endsAClosing() {
        return this == OPENED || this == SET || emptiesTheTrap();
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
