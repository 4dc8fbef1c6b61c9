package org.duskline.web.app;

import java.io.PrintStream;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.duskline.web.settings.Settings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

@Command(
        name = "run",
        description = "Runs the service: listens to the nodes, watches, tells, and shows the pages, until it is"
                + " interrupted (Ctrl-C).")
final class RunCommand implements Callable<Integer> {
    @Mixin
    private Standard standard;

    @Mixin
    private SettingsOption settings;

    private final Surroundings surroundings;

    RunCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InterruptedException {
        Settings read = settings.read(surroundings);
        Logs.detail(read.logDetail());
        CountDownLatch interrupted = new CountDownLatch(1);
        try (AtInterrupt atInterrupt = new AtInterrupt(interrupted);
                Service service = Service.start(Wishes.of(read), surroundings.clock())) {
            surroundings.err().println("The pages are at " + service.pagesAddress() + ".");
            service.ownersCode().ifPresent(code -> askForAnOwner(read, service, code));
            surroundings
                    .err()
                    .println("Nodes are heard at " + service.broker() + ", topic "
                            + read.topics().readings("NODE") + ".");
            surroundings.err().println("Ctrl-C ends it.");
            interrupted.await();
            surroundings.err().println("Putting everything away.");
        }
        return Exit.DONE;
    }

    private void askForAnOwner(Settings read, Service service, String code) {
        PrintStream err = surroundings.err();
        err.println("Nobody has an account yet. Make the owner's at " + service.pagesAddress() + "/join with the code "
                + code + ",");
        err.println("or with \"duskline owner NAME\". Until then the pages answer on this machine alone"
                + (service.pagesAddress().contains(read.pagesHost())
                        ? "."
                        : "; start again afterwards to reach them at " + read.pagesHost() + "."));
    }
}
