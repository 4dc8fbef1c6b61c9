package org.duskline.web.page.board;

import java.time.Instant;
import java.util.Optional;
import org.duskline.analyzer.evening.AtTheTrap;
import org.duskline.analyzer.evening.FlightEnd;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.Visit;

/**
 * What somebody sees who stands at a trap with a closure in hand.
 *
 * @param now the instant it was looked at
 * @param link the connection to the broker
 * @param trap the trap as it is now
 * @param entrance what its entrance says
 * @param flightEnd when flight ends there tonight
 * @param moveIn the swarm that is held to be in it
 * @param closed the visit that shut it; empty while it is open
 */
public record Doorstep(
        Instant now,
        BrokerLink link,
        TrapNow trap,
        AtTheTrap entrance,
        FlightEnd flightEnd,
        Optional<Finding> moveIn,
        Optional<Visit> closed) {}
