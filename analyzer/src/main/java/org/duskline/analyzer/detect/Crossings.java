package org.duskline.analyzer.detect;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskline.analyzer.finding.Evidence;

/** The one way in which evidence says how many crossings there were, so that a page can set it against a threshold. */
public final class Crossings {
    private static final Pattern SAID = Pattern.compile("([0-9.]+) crossings a minute for .*");

    private Crossings() {}

    /** In words: "4.2 crossings a minute for half an hour". */
    static String said(double perMinute, String howLong) {
        return String.format(Locale.ROOT, "%.1f crossings a minute for %s", perMinute, howLong);
    }

    /** How many a minute the evidence speaks of; empty where it speaks of none. */
    public static OptionalDouble perMinute(List<Evidence> evidence) {
        return evidence.stream()
                .map(Evidence::said)
                .map(SAID::matcher)
                .filter(Matcher::matches)
                .mapToDouble(rate -> Double.parseDouble(rate.group(1)))
                .findFirst();
    }
}
