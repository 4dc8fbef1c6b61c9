package org.duskline.web.app;

import java.util.concurrent.Callable;
import org.duskline.web.settings.ExampleFile;
import org.duskline.web.settings.Key;
import org.duskline.web.settings.Settings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "settings",
        description = "Prints a commented settings file to start from, or the settings that hold here.")
final class SettingsCommand implements Callable<Integer> {
    @Mixin
    private Standard standard;

    @Mixin
    private SettingsOption settings;

    @Option(names = "--current", description = "Print the settings that hold here; passwords are hidden.")
    private boolean current;

    private final Surroundings surroundings;

    SettingsCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        if (current) {
            print(settings.read(surroundings));
        } else {
            surroundings.out().print(ExampleFile.text());
        }
        return Exit.DONE;
    }

    private void print(Settings read) {
        for (Key key : Key.values()) {
            surroundings.out().println(key.dotted() + ": " + read.shown(key).orElse(""));
        }
    }
}
