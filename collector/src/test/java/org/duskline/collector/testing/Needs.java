package org.duskline.collector.testing;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * What a test needs of the machine. Where it is missing the test is skipped with the reason, or fails if
 * {@code DUSKLINE_REQUIRE_ALL_TESTS=1} says that nothing may be skipped.
 */
public final class Needs {
    private Needs() {}

    /** The path of an installed program. */
    public static Path program(String name) {
        Optional<Path> found = Stream.concat(
                        Stream.of(System.getenv("PATH").split(File.pathSeparator)),
                        Stream.of("/usr/sbin", "/usr/local/sbin"))
                .map(folder -> Path.of(folder, name))
                .filter(Files::isExecutable)
                .findFirst();
        return found.orElseGet(() ->
                missing("needs " + name + ", which is not installed here (Debian: apt-get install " + name + ")"));
    }

    private static Path missing(String reason) {
        if ("1".equals(System.getenv("DUSKLINE_REQUIRE_ALL_TESTS"))) {
            throw new AssertionError("This test " + reason + ", and DUSKLINE_REQUIRE_ALL_TESTS is set");
        }
        return Assumptions.abort("This test " + reason);
    }
}
