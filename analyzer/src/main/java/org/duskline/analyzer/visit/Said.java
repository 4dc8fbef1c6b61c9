package org.duskline.analyzer.visit;

import java.util.Locale;

/** What a keeper answers to a finding: how far they are with it, or what it really was. */
public enum Said {
    SEEN(false),
    GOING(false),
    CLOSED(false),
    SWARM(true),
    RAIN(true),
    ROBBERS(true),
    HANDS(true),
    ANIMAL(true),
    SCALE_JUMPED(true),
    OTHER(true);

    private final boolean verdict;

    Said(boolean verdict) {
        this.verdict = verdict;
    }

    /** Whether it says what the finding really was. */
    public boolean isVerdict() {
        return verdict;
    }

    /** Whether it calls a move-in a false alarm. */
    public boolean deniesASwarm() {
        return verdict && this != SWARM;
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
