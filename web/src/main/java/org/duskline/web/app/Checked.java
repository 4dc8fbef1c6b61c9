package org.duskline.web.app;

import java.util.Locale;

/**
 * What came of one check.
 *
 * @param verdict how it is
 * @param what what was checked, in a word
 * @param words what was found and, where it is not fine, what to do
 */
record Checked(Verdict verdict, String what, String words) {
    enum Verdict {
        FINE,
        /** Can stay so, but better known. */
        NOTE,
        WRONG
    }

    static Checked fine(String what, String words) {
        return new Checked(Verdict.FINE, what, words);
    }

    static Checked note(String what, String words) {
        return new Checked(Verdict.NOTE, what, words);
    }

    static Checked wrong(String what, String words) {
        return new Checked(Verdict.WRONG, what, words);
    }

    boolean isWrong() {
        return verdict == Verdict.WRONG;
    }

    String line() {
        return String.format(Locale.ROOT, "%-5s  %-8s  %s", verdict.name().toLowerCase(Locale.ROOT), what, words);
    }
}
