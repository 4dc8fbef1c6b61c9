package org.duskline.web.app;

import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.duskline.collector.store.Store;
import org.duskline.web.door.Door;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "owner",
        description =
                "Makes the owner's account, without which the pages answer on this machine alone, or gives somebody"
                        + " who has forgotten theirs a new password. The password is asked for; piped in, it is the first line.")
final class OwnerCommand implements Callable<Integer> {
    @Mixin
    private Standard standard;

    @Mixin
    private DatabaseOption database;

    @Parameters(paramLabel = "NAME", description = "The name to sign in with.")
    private String name;

    @Option(
            names = "--new-password",
            description = "Somebody of this name has an account already: give it a new password and sign it out"
                    + " everywhere.")
    private boolean newPassword;

    private final Surroundings surroundings;

    OwnerCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws IOException {
        try (Store store = database.open(surroundings)) {
            Door door = Door.open(store, surroundings.clock());
            if (newPassword) {
                door.newPassword(name, password());
                surroundings.err().println(name + " has a new password and is signed out everywhere.");
            } else {
                refuseASecondOwner(door);
                String made = door.makeOwner(name, password()).name();
                surroundings.err().println(made + " can sign in now. Other people are invited on the page \"People\".");
            }
        }
        return Exit.DONE;
    }

    /** Before a password is asked for in vain. */
    private static void refuseASecondOwner(Door door) {
        door.accounts().stream().findFirst().ifPresent(owner -> {
            throw Failure.of("There is an owner already: " + owner.name()
                    + ". Other people are invited on the page \"People\"; a forgotten password is changed with"
                    + " --new-password.");
        });
    }

    private String password() throws IOException {
        Console console = System.console();
        String typed = console == null ? firstLine() : new String(console.readPassword("Password: "));
        if (console != null && !typed.equals(new String(console.readPassword("The same again: ")))) {
            throw Failure.of("The two were not the same. Nothing was changed.");
        }
        return typed;
    }

    private String firstLine() throws IOException {
        BufferedReader reader = new BufferedReader(new InputStreamReader(surroundings.in(), StandardCharsets.UTF_8));
        return Optional.ofNullable(reader.readLine())
                .orElseThrow(() -> Failure.askedWrongly("No password was given on standard input."));
    }
}
