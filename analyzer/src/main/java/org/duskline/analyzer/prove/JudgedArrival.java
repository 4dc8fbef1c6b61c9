package org.duskline.analyzer.prove;

import org.duskline.analyzer.season.TrapTruth;

/**
 * One true arrival and what became of it.
 *
 * @param truth what happened
 * @param raised when the first fitting move-in was raised, Unix seconds; NaN if never
 * @param probability how sure that move-in said it was; NaN if there was none
 * @param repeats further move-ins for it
 * @param warnedHours hours from the first scouting finding to the arrival; NaN if there was none
 * @param evening told by half an hour after sunset; null if that could not be asked for
 */
record JudgedArrival(
        TrapTruth.Arrival truth, double raised, double probability, int repeats, double warnedHours, Boolean evening) {

    boolean heard() {
        return !Double.isNaN(truth.heardHalf());
    }

    boolean found() {
        return !Double.isNaN(raised);
    }

    double delayMinutes() {
        return (raised - truth.half()) / 60;
    }

    double afterHeardMinutes() {
        return (raised - truth.heardHalf()) / 60;
    }
}
