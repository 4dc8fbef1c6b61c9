package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Tonight's round. Distances are as the crow flies; roads are longer, which the keeper's own speed allows for.
 *
 * @param stops in order; empty where nothing is to be closed
 * @param leave when to set out so as to be at the first stop when it is best closed; empty without stops
 * @param homeKm the last leg, back home; 0 without a home
 * @param homeAt when the keeper is back; empty without stops
 * @param km all legs together
 * @param driving all drives together
 * @param atStops all stops together, waiting included
 * @param shortest whether no shorter order exists; false where there were too many stops to be certain
 */
public record Round(
        List<Stop> stops,
        Optional<Instant> leave,
        double homeKm,
        Optional<Instant> homeAt,
        double km,
        Duration driving,
        Duration atStops,
        boolean shortest) {
    public Round {
        stops = List.copyOf(stops);
    }

    /** From setting out until back. */
    public Duration total() {
        return driving.plus(atStops);
    }
}
