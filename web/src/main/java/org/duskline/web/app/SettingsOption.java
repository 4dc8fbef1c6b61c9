package org.duskline.web.app;

import java.nio.file.Path;
import java.util.Optional;
import org.duskline.web.settings.Settings;
import picocli.CommandLine.Option;

/** The option that names the settings file, shared by the commands that read it. */
final class SettingsOption {
    @Option(
            names = "--config",
            paramLabel = "FILE",
            description =
                    "The settings. Without it duskline.yaml, if there is one here; otherwise the standard settings.")
    private Path file;

    Settings read(Surroundings surroundings) {
        return Settings.read(Optional.ofNullable(file), surroundings.environment());
    }
}
