package org.duskline.web.settings;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a setting's value must look like. */
enum Form {
    /** A file or folder; relative ones are looked up beside the settings file. */
    PATH("a path"),
    TEXT("text"),
    /** Text that is never shown. */
    SECRET("text, never shown"),
    /** The address of a broker. */
    BROKER("an address such as mqtt://host:1883"),
    HOST("a name or address of this machine"),
    PORT("a number from 0 to 65535; 0 takes any free one"),
    SECURITY("starttls, tls or none"),
    NUMBER("a number above 0"),
    PERCENT("a number from 1 to 99"),
    SPOT("latitude, longitude in degrees, such as 46.93, 15.02"),
    DETAIL("error, warn, info or debug");

    private static final List<String> DETAILS = List.of("error", "warn", "info", "debug");
    private static final List<String> SECURITIES = List.of("starttls", "tls", "none");
    private static final String DECIMAL = "\\d{1,5}(\\.\\d{1,4})?";
    private static final Pattern TWO_NUMBERS =
            Pattern.compile("(-?\\d{1,2}(?:\\.\\d+)?)\\s*,\\s*(-?\\d{1,3}(?:\\.\\d+)?)");
    private static final int HIGHEST_PORT = 65_535;

    private final String words;

    Form(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }

    /** Whether a value has this form. */
    boolean fits(String value) {
        return switch (this) {
            case PORT -> value.matches("\\d{1,5}") && Integer.parseInt(value) <= HIGHEST_PORT;
            case SECURITY -> SECURITIES.contains(value.toLowerCase(Locale.ROOT));
            case NUMBER -> value.matches(DECIMAL) && Double.parseDouble(value) > 0;
            case PERCENT -> value.matches("[1-9]\\d?");
            case SPOT -> onEarth(value);
            case DETAIL -> DETAILS.contains(value.toLowerCase(Locale.ROOT));
            case PATH, HOST -> !value.isBlank() && value.indexOf('\0') < 0;
            case TEXT, SECRET, BROKER -> !value.isBlank();
        };
    }

    private static boolean onEarth(String value) {
        Matcher numbers = TWO_NUMBERS.matcher(value.strip());
        return numbers.matches()
                && Math.abs(Double.parseDouble(numbers.group(1))) <= 90
                && Math.abs(Double.parseDouble(numbers.group(2))) <= 180;
    }

    /** What is wrong with a value, if anything. */
    Optional<String> complaint(String value) {
        return fits(value) ? Optional.empty() : Optional.of("must be " + words);
    }
}
