package org.duskline.web.deliver;

import java.time.ZoneId;
import java.util.Optional;

/**
 * Somebody who is told.
 *
 * @param id the number under which the person is kept
 * @param name a name that no other person of this program has
 * @param zone the zone of the person's clock
 * @param quiet when to let the person sleep, if ever
 */
public record Person(long id, String name, ZoneId zone, Optional<QuietHours> quiet) {}
