package org.duskline.analyzer.season;

/** One sample as the board holds it, before it is packed. What the node does not send is NaN. */
record Reading(
        double at,
        double in,
        double out,
        double weightKg,
        double loadCounts,
        double weightSdKg,
        double cellCelsius,
        double boxCelsius,
        double humidityPercent) {

    /** The same by a clock that is off by some seconds. */
    Reading moved(double seconds) {
        return new Reading(
                at + seconds, in, out, weightKg, loadCounts, weightSdKg, cellCelsius, boxCelsius, humidityPercent);
    }
}
