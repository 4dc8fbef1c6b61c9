package org.duskline.web.settings;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.text.similarity.LevenshteinDistance;

/** Finds the name that was probably meant. */
public final class NearestName {
    private NearestName() {}

    /** The known name with the fewest letters to change, if at least half of its letters stay. */
    public static Optional<String> to(String mistyped, Collection<String> known) {
        LevenshteinDistance letters = LevenshteinDistance.getDefaultInstance();
        String lower = mistyped.toLowerCase(Locale.ROOT);
        return known.stream()
                .min(Comparator.comparing(name -> letters.apply(lower, name.toLowerCase(Locale.ROOT))))
                .filter(name -> 2 * letters.apply(lower, name.toLowerCase(Locale.ROOT)) <= name.length());
    }

    /** The same as half a sentence: {@code  Did you mean "mqtt.url"?}, or nothing. */
    public static String hint(String mistyped, Collection<String> known) {
        return to(mistyped, known)
                .map(name -> " Did you mean \"" + name + "\"?")
                .orElse("");
    }
}
