package org.duskline.web.app;

import java.util.concurrent.Callable;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.duskline.web.deliver.FindingJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

@Command(
        name = "findings",
        description = "Prints everything that was found, one JSON object a line, in the order in which it was raised.")
final class FindingsCommand implements Callable<Integer> {
    @Mixin
    private Standard standard;

    @Mixin
    private DatabaseOption database;

    private final Surroundings surroundings;

    FindingsCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        try (Store store = database.openExisting(surroundings)) {
            new FindingLog(store).all().forEach(finding -> surroundings.out().print(FindingJson.text(finding) + "\n"));
        }
        return Exit.DONE;
    }
}
