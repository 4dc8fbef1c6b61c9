package org.duskline.analyzer.finding;

import java.util.Locale;

/** The explanations that compete for what a trap shows. */
public enum Rival {
    SWARM,
    SCOUTS,
    HANDS,
    TARE_SHIFT,
    RAIN,
    BIRD,
    MOUSE,
    BUMBLEBEES,
    ROBBERS,
    GLARE,
    ANTS,
    WIND,
    SUN_DRIFT,
    RESTART,
    NOTHING;

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
