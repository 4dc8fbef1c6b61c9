package org.duskline.web.deliver;

import java.time.Duration;
import java.time.ZoneId;
import java.util.Optional;

/**
 * Somebody who is told.
 *
 * @param id the number under which the person is kept
 * @param name a name that no other person of this program has
 * @param zone the zone of the person's clock
 * @param quiet when to let the person sleep, if ever
 * @param reminder how long before a trap can be closed to remind of one that nobody has answered for; empty for never
 */
public record Person(long id, String name, ZoneId zone, Optional<QuietHours> quiet, Optional<Duration> reminder) {
    /** What a person gets who has not said otherwise: time to eat, load the car and drive. */
    static final Duration USUAL_REMINDER = Duration.ofMinutes(90);
}
