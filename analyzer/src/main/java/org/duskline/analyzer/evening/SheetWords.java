package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** How the sheet says times, lengths and chances. */
final class SheetWords {
    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private SheetWords() {}

    static String hour(Instant time, ZoneId zone) {
        return HOUR.format(time.atZone(zone));
    }

    static String window(Window window, ZoneId zone) {
        return hour(window.opens(), zone) + " to " + hour(window.closes(), zone);
    }

    static String km(double km) {
        return String.format(Locale.ROOT, "%.1f km", km);
    }

    static String length(Duration length) {
        long minutes = Math.round(length.toSeconds() / 60.0);
        return minutes < 60 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
    }

    static String percent(double probability) {
        return Double.isNaN(probability) ? "not known" : Math.round(100 * probability) + " %";
    }
}
