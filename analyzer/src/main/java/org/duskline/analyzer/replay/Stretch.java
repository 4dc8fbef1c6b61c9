package org.duskline.analyzer.replay;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.watch.Nearest;
import org.duskline.collector.store.Store;

/**
 * A stretch of a trap's past that somebody asks about: how near did it come to a finding, and what held it back?
 *
 * @param from first sample, inclusive
 * @param until first moment left out
 */
public record Stretch(Instant from, Instant until) {
    /** With the day for late news and the hours that a case looks back it stays within what a watch keeps. */
    public static final Duration LONGEST = Duration.ofDays(7);

    private static final Duration LATE = Duration.ofHours(6);

    /** @throws IllegalArgumentException if it ends before it begins, or is longer than a week */
    public Stretch {
        if (!from.isBefore(until) || Duration.between(from, until).compareTo(LONGEST) > 0) {
            throw new IllegalArgumentException(
                    "Ask about a stretch of at most " + LONGEST.toDays() + " days that ends after it begins.");
        }
    }

    /** First receipt that bears on it. */
    Instant settling() {
        return from.minus(Replay.SETTLING);
    }

    /** First receipt that came too late for it. */
    Instant heard() {
        return until.plus(LATE);
    }

    /** How many messages of the line have to be read for it, at most. */
    public long messages(Store store) {
        return store.samples().received(settling(), heard()).size();
    }

    /**
     * How near it came to a move-in, to scouting, to robbing and to a departure. Reads only what bears on it; changes
     * nothing.
     *
     * @param thresholds those to judge by
     * @param log what was told
     * @param progress told the share that has been read, 0 to 1
     * @throws IllegalArgumentException if no node was ever fitted to the trap
     */
    public List<Nearest> nearest(
            Store store,
            ThresholdBook thresholds,
            Instant present,
            FindingLog log,
            String trap,
            DoubleConsumer progress) {
        Past past = Past.between(store, settling(), heard(), progress);
        return new Replay(past)
                .nearest(
                        name -> thresholds.inForce(name, present).thresholds(),
                        trap,
                        this,
                        log.ofTrap(trap, Instant.MIN, Instant.MAX));
    }
}
