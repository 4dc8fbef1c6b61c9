package org.duskline.collector.store;

import java.time.Duration;
import java.time.Instant;

/**
 * A message that brought samples.
 *
 * @param received when it reached us
 * @param first time of its first sample
 * @param last time of its last sample
 * @param samples how many it brought
 */
public record HeardPack(Instant received, Instant first, Instant last, int samples) {
    /** How old its newest sample was when it reached us. */
    public Duration delay() {
        return Duration.between(last, received);
    }
}
