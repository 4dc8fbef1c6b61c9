package org.duskline.analyzer.prove;

/**
 * What was promised for one kind of fitting at the typical level.
 *
 * @param fitted both, scale or counter
 * @param caught least share of the heard arrivals
 * @param delayMinutes most, from half in, median
 * @param afterHeardMinutes most, from being heard, nine in ten
 * @param falseMoveIns most, per 100 trap-days
 */
record Promise(String fitted, double caught, double delayMinutes, double afterHeardMinutes, double falseMoveIns) {
    /** Share of the arrivals with three hours of scouts that are announced three hours ahead. */
    static final double ANNOUNCED = 0.8;
    /** False scoutings per 100 trap-days with a counter. */
    static final double FALSE_SCOUTINGS = 0.5;
    /** Departures and robbings found. */
    static final double FOUND = 0.9;
    /** False departures or robbings per 100 trap-days. */
    static final double FALSE_SIDE = 0.1;

    static Promise of(String fitted) {
        return switch (fitted) {
            case "both" -> new Promise(fitted, 0.99, 5, 10, 0.05);
            case "scale" -> new Promise(fitted, 0.97, 10, 20, 0.3);
            case "counter" -> new Promise(fitted, 0.95, 5, 10, 0.3);
            default -> throw new IllegalArgumentException("Nothing is promised for a trap fitted with " + fitted + ".");
        };
    }

    /** At the harsh level at most twice the misses and delays and three times the false alarms. */
    Promise at(String level) {
        return level.equals("harsh")
                ? new Promise(fitted, 1 - 2 * (1 - caught), 2 * delayMinutes, 2 * afterHeardMinutes, 3 * falseMoveIns)
                : this;
    }
}
