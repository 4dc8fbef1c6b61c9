package org.duskline.collector.intake;

import java.time.Duration;
import java.util.random.RandomGenerator;

/**
 * The pauses between tries: each may be twice as long as the one before, up to a limit, and its length is drawn at random
 * from the upper half of what it may be, so that many programs don't come back to a broker in step.
 */
final class Pauses {
    private final Duration first;
    private final Duration longest;
    private final RandomGenerator random;
    private Duration next;

    Pauses(Duration first, Duration longest, RandomGenerator random) {
        this.first = first;
        this.longest = longest;
        this.random = random;
        this.next = first;
    }

    /** How long to wait before the next try. */
    Duration next() {
        Duration limit = next;
        Duration doubled = next.multipliedBy(2);
        next = doubled.compareTo(longest) < 0 ? doubled : longest;
        return Duration.ofNanos((long) (limit.toNanos() * (0.5 + 0.5 * random.nextDouble())));
    }

    /** To be called after a success that has lasted. */
    void restart() {
        next = first;
    }
}
