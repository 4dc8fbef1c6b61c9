package org.duskline.web.deliver;

import java.time.Instant;
import org.duskline.analyzer.finding.Finding;

/**
 * A trap of tonight's round that nobody has answered for, nor closed.
 *
 * @param moveIn why it is to be closed
 * @param closable from when it can be closed
 * @param shuts until when
 */
public record Unanswered(Finding moveIn, Instant closable, Instant shuts) {
    public Unanswered {
        if (!closable.isBefore(shuts)) {
            throw new IllegalArgumentException(moveIn.trap() + " cannot be closed from " + closable + " to " + shuts
                    + ": the one must be before the other.");
        }
    }
}
