package org.duskline.web.deliver;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * The pauses between tries: each may be twice as long as the one before, up to a limit, and its length is drawn at random
 * from the upper half of what it may be, so that many messages don't come back to a server in step.
 *
 * @param first the first pause at most
 * @param longest every pause at most
 * @param giveUpAfter how old a message may become
 */
public record RetrySchedule(Duration first, Duration longest, Duration giveUpAfter) {
    private static final int ENOUGH_DOUBLINGS = 30;

    /** Half an hour at most, so that a server's return is noticed within the same evening; given up after five days. */
    public static final RetrySchedule USUAL =
            new RetrySchedule(Duration.ofSeconds(30), Duration.ofMinutes(30), Duration.ofDays(5));

    public RetrySchedule {
        if (first.isNegative() || first.isZero() || longest.compareTo(first) < 0) {
            throw new IllegalArgumentException("Pauses must be positive and not shrink: " + first + " to " + longest);
        }
    }

    /**
     * How long to wait.
     *
     * @param failures how often it has failed, from 1
     */
    Duration pause(int failures, RandomGenerator random) {
        long doublings = 1L << Math.min(failures - 1, ENOUGH_DOUBLINGS);
        double seconds = Math.min((double) first.toSeconds() * doublings, longest.toSeconds());
        return Duration.ofMillis(Math.round(seconds * 1000 * (0.5 + 0.5 * random.nextDouble())));
    }
}
