package org.duskline.analyzer.closed;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/** A swarm that stays closed in for longer than its keeper wants. */
public final class NotFetched {
    private NotFetched() {}

    /**
     * Asks whether the time is up.
     *
     * @param closed when the trap was closed
     * @param fetched when it was emptied or opened again, if it was
     * @param now the moment asked about
     */
    public static Optional<Notice> find(Instant closed, Optional<Instant> fetched, Instant now, ClosedLimits limits) {
        Instant due = closed.plus(limits.fetchWithin());
        boolean done = fetched.filter(time -> !time.isBefore(closed)).isPresent();
        if (done || now.isBefore(due)) {
            return Optional.empty();
        }
        return Optional.of(new Notice(
                Notice.What.NOT_FETCHED,
                due,
                now,
                "Closed for " + Duration.between(closed, now).toHours() + " hours and not fetched; your limit is "
                        + limits.fetchWithin().toHours() + "."));
    }
}
