package org.duskline.web.deliver;

import java.time.Instant;
import java.util.Optional;

/** Draws the curve that goes with a message. What it throws costs the message its picture and nothing else. */
@FunctionalInterface
public interface Artist {
    /**
     * Draws the hours around an onset.
     *
     * @return PNG; empty where there is nothing to draw from
     */
    Optional<byte[]> png(String trap, Instant onset);
}
