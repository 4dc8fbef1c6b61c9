package org.duskline.web.app;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.duskline.collector.intake.BrokerAccess;
import org.duskline.web.settings.Settings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "password",
        description =
                "Makes a password for a node at the broker inside Duskline and prints it, once: it is not kept. An"
                        + " earlier one of that name no longer holds. A running Duskline takes it from the next connection on.")
final class PasswordCommand implements Callable<Integer> {
    @Mixin
    private Standard standard;

    @Mixin
    private SettingsOption settings;

    @Parameters(paramLabel = "NAME", description = "The node's own name, as in its topics.")
    private String name;

    @Option(
            names = "--listener",
            description = "Not for a node but for a program that hears everything and publishes nothing.")
    private boolean listener;

    @Option(names = "--remove", description = "Lets the name in no longer, from its next connection on.")
    private boolean remove;

    private final Surroundings surroundings;

    PasswordCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Settings read = settings.read(surroundings);
        Path file = read.brokerPasswords()
                .orElseThrow(
                        () -> Failure.askedWrongly("No file for the passwords is named. Set broker.passwords in the"
                                + " settings, for example to broker.passwords, and try again."));
        BrokerAccess access = new BrokerAccess(file);
        if (remove) {
            forget(access, file);
            return Exit.DONE;
        }
        String password;
        try {
            password = access.admit(name, listener ? BrokerAccess.Use.LISTENER : BrokerAccess.Use.NODE);
        } catch (IllegalArgumentException wrong) {
            throw Failure.askedWrongly(wrong.getMessage());
        }
        surroundings.out().println(password);
        surroundings
                .err()
                .println("This is the password of " + name + ", told this once. It connects as the user " + name
                        + (listener
                                ? " and hears everything below " + read.topics().root() + "/."
                                : " and may publish under " + read.topics().root() + "/" + name + "/ alone."));
        return Exit.DONE;
    }

    private void forget(BrokerAccess access, Path file) {
        if (!access.dismiss(name)) {
            throw Failure.of("No " + name + " stands in " + file + ". It knows "
                    + (access.names().isEmpty() ? "nobody" : String.join(", ", access.names())) + ".");
        }
        surroundings.err().println(name + " is let in no longer.");
    }
}
