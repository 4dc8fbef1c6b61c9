package org.duskline.web.app;

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
}
