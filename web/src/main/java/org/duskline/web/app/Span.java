package org.duskline.web.app;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a length of time as people write it: 90s, 30m, 12h, 7d. */
final class Span {
    private static final Pattern WRITTEN = Pattern.compile("(\\d{1,9})\\s*([smhd])");

    private Span() {}

    static Duration read(String text) {
        Matcher written = WRITTEN.matcher(text.strip());
        if (!written.matches()) {
            throw Failure.askedWrongly("\"" + text + "\" is no length of time. Write 90s, 30m, 12h or 7d.");
        }
        long count = Long.parseLong(written.group(1));
        return switch (written.group(2)) {
            case "s" -> Duration.ofSeconds(count);
            case "m" -> Duration.ofMinutes(count);
            case "h" -> Duration.ofHours(count);
            default -> Duration.ofDays(count);
        };
    }
}
