package org.duskline.web.app;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Map;

/** The program as somebody at a terminal meets it. */
final class Session {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final int exit;

    private Session(String typed, Map<String, String> environment, String... arguments) {
        Surroundings surroundings = new Surroundings(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                environment,
                () -> Instant.parse("2026-06-01T12:00:00Z"),
                new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
        exit = Program.run(surroundings, arguments);
    }

    static Session of(String... arguments) {
        return new Session("", Map.of(), arguments);
    }

    static Session with(Map<String, String> environment, String... arguments) {
        return new Session("", environment, arguments);
    }

    /** Somebody types, or pipes in, what the program asks for. */
    static Session typing(String typed, String... arguments) {
        return new Session(typed, Map.of(), arguments);
    }

    int exit() {
        return exit;
    }

    String out() {
        return out.toString(StandardCharsets.UTF_8);
    }

    String err() {
        return err.toString(StandardCharsets.UTF_8);
    }
}
