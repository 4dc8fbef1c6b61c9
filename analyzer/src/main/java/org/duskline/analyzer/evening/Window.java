package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;

/**
 * When a trap can be closed with its bees at home.
 *
 * @param opens when flight ends
 * @param closes when flight may begin again: next civil dawn, or the sunrise of a bright night
 */
public record Window(Instant opens, Instant closes) {
    /** The usual wait after the last flight, 30 to 60 minutes; common practice. */
    public static final Duration USUAL_WAIT = Duration.ofMinutes(30);

    public Window {
        if (!opens.isBefore(closes)) {
            throw new IllegalArgumentException("A closing window from " + opens + " to " + closes + " is empty.");
        }
    }

    /** When to close rather than when one can: after the usual wait, or half-way through a shorter window. */
    public Instant best() {
        Duration half = Duration.between(opens, closes).dividedBy(2);
        return opens.plus(half.compareTo(USUAL_WAIT) < 0 ? half : USUAL_WAIT);
    }

    public boolean contains(Instant time) {
        return !time.isBefore(opens) && time.isBefore(closes);
    }
}
