package org.duskline.web.app;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.duskline.web.settings.Settings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

@Command(
        name = "doctor",
        description =
                "Checks the settings, the line, the database, the broker, the pages' port, the clock and the disk,"
                        + " and says what to do.")
final class DoctorCommand implements Callable<Integer> {
    @Mixin
    private Standard standard;

    @Mixin
    private SettingsOption settings;

    private final Surroundings surroundings;

    DoctorCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InterruptedException {
        Settings read = settings.read(surroundings);
        List<Checked> all = new ArrayList<>();
        tell(all, Checked.fine("settings", "read without a mistake"));
        FileChecks files = new FileChecks(read, surroundings.clock());
        tell(all, files.line());
        tell(all, files.database());
        tell(all, files.disk());
        tell(all, files.clock());
        NetworkChecks network = new NetworkChecks(read, surroundings.clock());
        tell(all, network.broker());
        tell(all, files.nodes());
        tell(all, network.pages());
        return all.stream().anyMatch(Checked::isWrong) ? Exit.FAILED : Exit.DONE;
    }

    private void tell(List<Checked> all, Checked checked) {
        all.add(checked);
        surroundings.out().println(checked.line());
    }
}
