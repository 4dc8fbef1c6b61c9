package org.duskline.analyzer.season;

import java.util.Locale;

/** How hard a season is on whoever watches it. Multipliers of the usual rates and sizes; the usual is invented. */
public enum Level {
    /** A quarter of the usual nuisances, a tenth of the faults. */
    CLEAN(0.25, 0.1),
    /** Meant as real life. */
    TYPICAL(1, 1),
    /** Two and a half times the nuisances and faults. */
    HARSH(2.5, 2.5);

    private final double nuisances;
    private final double faults;

    Level(double nuisances, double faults) {
        this.nuisances = nuisances;
        this.faults = faults;
    }

    /** Multiplier for weather, animals and people. */
    public double nuisances() {
        return nuisances;
    }

    /** Multiplier for what boards and links do wrong. */
    public double faults() {
        return faults;
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT);
    }
}
