package org.duskline.collector.trap;

import java.time.ZoneId;

/**
 * One box at one site over one season.
 *
 * @param name the keeper's name for it, unique on the line
 * @param latitude degrees north, WGS 84
 * @param longitude degrees east, WGS 84
 * @param zone the time zone whose evenings count at the site
 */
public record Trap(String name, double latitude, double longitude, ZoneId zone) {
    public Trap {
        if (name.isBlank()) {
            throw new IllegalArgumentException("A trap needs a name.");
        }
        if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) {
            throw new IllegalArgumentException("Trap " + name + " lies at latitude " + latitude + ", longitude "
                    + longitude + ", which is not on Earth. GeoJSON wants the longitude first.");
        }
    }
}
