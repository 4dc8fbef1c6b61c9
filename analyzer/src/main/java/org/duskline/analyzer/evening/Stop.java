package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import org.duskline.analyzer.finding.Finding;
import org.duskline.collector.trap.Trap;

/**
 * One trap of tonight's round.
 *
 * @param number 1 for the first
 * @param trap the trap
 * @param moveIn why it is on the sheet
 * @param flightEnd when it can be closed
 * @param lift what there is to lift
 * @param legKm from the stop before, or from home, as the crow flies; 0 for the first stop of a round without a home
 * @param drive how long that takes at the keeper's own speed
 * @param arrive when the keeper is there, having waited before the first stop only
 * @param late whether that is after its window closes
 */
public record Stop(
        int number,
        Trap trap,
        Finding moveIn,
        FlightEnd flightEnd,
        Lift lift,
        double legKm,
        Duration drive,
        Instant arrive,
        boolean late) {

    /** The spot as a link that a phone opens in its own map. */
    public String geo() {
        return GeoUri.of(trap.latitude(), trap.longitude());
    }

    /** When to shut it: at the best moment, or on arrival if that is later. */
    public Instant close() {
        Instant best = flightEnd.window().best();
        return arrive.isAfter(best) ? arrive : best;
    }
}
