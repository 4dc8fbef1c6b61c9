package org.duskline.web.app;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import java.util.Locale;
import org.slf4j.LoggerFactory;

/** How much the log says; it always goes to standard error. */
final class Logs {
    private static final String OURS = "org.duskline";

    private Logs() {}

    /** For a command whose user waits for its result: only what went wrong. */
    static void quiet() {
        ours().setLevel(Level.ERROR);
    }

    /** For a running service. */
    static void detail(String level) {
        ours().setLevel(Level.toLevel(level.toUpperCase(Locale.ROOT), Level.INFO));
    }

    private static Logger ours() {
        return (Logger) LoggerFactory.getLogger(OURS);
    }
}
