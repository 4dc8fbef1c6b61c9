package org.duskline.analyzer.evening;

import java.util.List;
import org.duskline.analyzer.finding.Finding;
import org.duskline.collector.trap.Trap;

/**
 * A trap that may hold a swarm and may not, listed apart.
 *
 * @param trap the trap
 * @param moveIn the doubtful finding
 * @param flightEnd when it could be closed, should it turn out to be a swarm
 * @param settles what would settle it, best first, in the keeper's words
 */
public record Doubtful(Trap trap, Finding moveIn, FlightEnd flightEnd, List<String> settles) {
    public Doubtful {
        settles = List.copyOf(settles);
    }
}
