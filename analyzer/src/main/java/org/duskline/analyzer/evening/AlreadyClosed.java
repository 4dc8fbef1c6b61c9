package org.duskline.analyzer.evening;

import java.time.Instant;
import org.duskline.collector.trap.Trap;

/**
 * A trap whose swarm is shut in and still hangs there.
 *
 * @param trap the trap
 * @param since when it was closed
 * @param by who closed it
 */
public record AlreadyClosed(Trap trap, Instant since, String by) {}
