package org.duskline.web.page;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.duskline.collector.store.Store;
import org.duskline.web.door.Door;

/** An entrance as the demo has it: on this machine nobody has to sign in. For tests that are about other things. */
public final class OpenHouse {
    public static final Entrance ENTRANCE = make();

    private OpenHouse() {}

    private static Entrance make() {
        try {
            Path folder = Files.createTempDirectory("open-house");
            folder.toFile().deleteOnExit();
            Door door = Door.open(Store.open(folder.resolve("door.db")), () -> Instant.parse("2026-05-12T12:00:00Z"));
            return new Entrance(door, true, false);
        } catch (IOException unwritable) {
            throw new UncheckedIOException(unwritable);
        }
    }
}
