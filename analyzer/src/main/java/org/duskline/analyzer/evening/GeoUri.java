package org.duskline.analyzer.evening;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Map links by RFC 5870: latitude first, WGS 84. */
public final class GeoUri {
    /** A tenth of a metre. */
    private static final int DECIMALS = 6;

    private GeoUri() {}

    /**
     * The link for a spot.
     *
     * @param latitude degrees north; at a pole the longitude is written as 0, as section 3.4.2 asks
     * @param longitude degrees east
     */
    public static String of(double latitude, double longitude) {
        boolean pole = Math.abs(latitude) == 90;
        return "geo:" + decimal(latitude) + "," + decimal(pole ? 0 : longitude);
    }

    private static String decimal(double degrees) {
        BigDecimal rounded = BigDecimal.valueOf(degrees).setScale(DECIMALS, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
