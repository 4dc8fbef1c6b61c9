package org.duskline.web.page.board;

import java.time.Instant;

/**
 * One night at a site.
 *
 * @param dusk when it gets dark: end of civil twilight, or sunset where the twilight lasts
 * @param dawn when it gets light: begin of civil twilight, or sunrise where the twilight lasted
 */
public record Night(Instant dusk, Instant dawn) {}
