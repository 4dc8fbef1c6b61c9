package org.duskline.analyzer.sky;

import java.time.Instant;
import java.util.Optional;

/** How the sun goes against one height over one local day. */
public sealed interface Course {
    /**
     * It passes the height at least once.
     *
     * @param up the first time it climbs past it on this day; empty where it does not
     * @param down the first time it sinks past it on this day, which far north may be just after midnight
     */
    record Crosses(Optional<Instant> up, Optional<Instant> down) implements Course {}

    /** It is above the height from midnight to midnight. */
    record StaysAbove() implements Course {}

    /** It is below the height from midnight to midnight. */
    record StaysBelow() implements Course {}
}
