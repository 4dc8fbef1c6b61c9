package org.duskline.analyzer.finding;

import java.util.Locale;

/** What can be found at a trap. The wire name is the lower-case name with hyphens. */
public enum Kind {
    /** Scout bees inspect the trap well above its usual traffic: a heads-up. */
    SCOUTING,
    /** A swarm has moved in or is moving in. */
    MOVE_IN,
    /** The colony has left. */
    DEPARTURE,
    /** Bees strip old comb; no swarm. */
    ROBBING,
    /** Handled, shaken or fallen. */
    DISTURBED,
    /** Rain in the wood or on the lid. */
    SOAKED,
    /** Bird, mouse or bumblebees. */
    LODGER,
    /** The scale jumped without a bee. */
    TARE_SHIFT,
    /** No data for too long. */
    UNHEARD,
    /** A sensor stuck, saturated or absurd, a blocked lane, a wrong clock. */
    FAULTY,
    BATTERY_LOW,
    /** Bees pass a closed trap. */
    LEAKING,
    /** A closed box is getting too warm. */
    OVERHEATING,
    /** The weight vanished: fallen, taken down or stolen. */
    GONE;

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
