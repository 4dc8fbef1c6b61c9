package org.duskline.web.page;

import io.javalin.config.RoutesConfig;

/**
 * A part of the pages with routes of its own. The gate stands before all of them: who asks is known
 * ({@link Visitor#of}), and every request that changes something carries a form's token or was refused.
 */
public interface Part {
    /** Adds its routes. */
    void register(RoutesConfig routes);
}
