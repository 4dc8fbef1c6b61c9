package org.duskline.web.app;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.duskline.collector.store.Store;
import org.duskline.web.settings.Settings;
import picocli.CommandLine.Option;

/** The option that names the database, shared by the commands that need one. */
final class DatabaseOption {
    @Option(
            names = "--database",
            paramLabel = "FILE",
            description = "The database. Without it, the one that the settings name.")
    private Path file;

    /** Opens it, made new if it is not there. */
    Store open(Surroundings surroundings) {
        return Store.open(path(surroundings));
    }

    /** Opens one that must be there already. */
    Store openExisting(Surroundings surroundings) {
        Path path = path(surroundings);
        if (!Files.exists(path)) {
            throw Failure.of(
                    "There is no database " + path
                            + ". Name the right one with --database, or make one with \"duskline import\" or \"duskline run\".");
        }
        return Store.open(path);
    }

    private Path path(Surroundings surroundings) {
        return Optional.ofNullable(file)
                .orElseGet(() -> Settings.read(Optional.empty(), surroundings.environment())
                        .database());
    }
}
