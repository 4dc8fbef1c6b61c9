package org.duskline.analyzer.visit;

import java.time.Instant;
import java.util.Optional;

/**
 * A keeper's dated record at a trap.
 *
 * @param trap the trap's name
 * @param kind what was done
 * @param at when it was done, which may be long before it is written down
 * @param by who did it
 * @param massKg what the swarm weighed, kg, for a collection; NaN where not weighed
 * @param whereTo where the swarm was taken, for a collection
 * @param note the keeper's own words; may be empty
 */
public record Visit(
        String trap, VisitKind kind, Instant at, String by, double massKg, Optional<String> whereTo, String note) {
    private static final double HEAVIEST_KG = 100;

    public Visit {
        if (trap.isBlank()) {
            throw new IllegalArgumentException("A visit needs the name of a trap.");
        }
        if (by.isBlank()) {
            throw new IllegalArgumentException("A visit to " + trap + " needs the name of who made it.");
        }
        if (!Double.isNaN(massKg) && !(massKg > 0 && massKg <= HEAVIEST_KG)) {
            throw new IllegalArgumentException("A swarm from " + trap + " cannot weigh " + massKg
                    + " kg. Leave the weight out if it was not weighed.");
        }
    }

    /** A visit with nothing weighed, nowhere to go, and no note. */
    public static Visit of(String trap, VisitKind kind, Instant at, String by) {
        return new Visit(trap, kind, at, by, Double.NaN, Optional.empty(), "");
    }
}
