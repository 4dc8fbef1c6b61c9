package org.duskline.analyzer.evening;

/**
 * A point on the ground.
 *
 * @param latitude degrees north, WGS 84
 * @param longitude degrees east, WGS 84
 */
public record Place(double latitude, double longitude) {
    /** Mean radius of the earth, km (IUGG). */
    private static final double EARTH_KM = 6371.0088;

    public Place {
        if (!(Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180)) {
            throw new IllegalArgumentException(
                    "Latitude " + latitude + ", longitude " + longitude + " is not on Earth.");
        }
    }

    /**
     * Distance as the crow flies, km: the haversine formula on a sphere, within 0.6 % of the ellipsoid (Meeus,
     * Astronomical Algorithms, chapter 11, has both). A road is longer.
     */
    public double kmTo(Place other) {
        double north = Math.toRadians(other.latitude - latitude) / 2;
        double east = Math.toRadians(other.longitude - longitude) / 2;
        double chord = square(Math.sin(north))
                + Math.cos(Math.toRadians(latitude))
                        * Math.cos(Math.toRadians(other.latitude))
                        * square(Math.sin(east));
        return 2 * EARTH_KM * Math.asin(Math.min(1, Math.sqrt(chord)));
    }

    private static double square(double value) {
        return value * value;
    }
}
