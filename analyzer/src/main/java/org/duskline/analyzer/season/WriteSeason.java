package org.duskline.analyzer.season;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;

/** Writes one season to a folder: FOLDER SEED LEVEL DAYS TRAPS. */
public final class WriteSeason {
    private WriteSeason() {}

    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 5) {
            throw new IllegalArgumentException(
                    "Five arguments are needed: a folder, a seed, a level (clean, typical or harsh), days, traps.");
        }
        SeasonFiles.write(
                Path.of(arguments[0]),
                Long.parseLong(arguments[1]),
                Level.valueOf(arguments[2].toUpperCase(Locale.ROOT)),
                Integer.parseInt(arguments[3]),
                Integer.parseInt(arguments[4]));
    }
}
