package org.duskline.web.page.board;

import java.time.Instant;

/**
 * One night at a site.
 *
 * @param dusk end of civil twilight in the evening
 * @param dawn begin of civil twilight in the morning
 */
public record Night(Instant dusk, Instant dawn) {}
