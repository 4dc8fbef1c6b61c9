package org.duskline.web.page.board;

import java.time.Instant;
import org.duskline.analyzer.finding.Finding;
import org.duskline.collector.trap.Trap;

/**
 * A trap to close this evening.
 *
 * @param trap where it hangs
 * @param finding the finding that says so
 * @param flightEnds when the last bees are expected home
 * @param flightEndsBy what that expectation rests on, as half a sentence: "by sun and temperature"
 * @param opens from when to close
 * @param shuts until when: first light
 * @param closed whether it has been closed already
 * @param liftKg expected weight to lift, box and swarm; NaN when unknown
 */
public record Closing(
        Trap trap,
        Finding finding,
        Instant flightEnds,
        String flightEndsBy,
        Instant opens,
        Instant shuts,
        boolean closed,
        double liftKg) {}
