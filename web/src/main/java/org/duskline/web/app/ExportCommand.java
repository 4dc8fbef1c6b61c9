package org.duskline.web.app;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.duskline.collector.store.LineBook;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitting;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "export",
        description =
                "Prints the samples of a trap as CSV, with the units in the heading. What was not measured is empty.")
final class ExportCommand implements Callable<Integer> {
    @Mixin
    private Standard standard;

    @Mixin
    private DatabaseOption database;

    @Option(names = "--trap", paramLabel = "NAME", required = true, description = "The trap's name.")
    private String trap;

    @Option(
            names = "--from",
            paramLabel = "MOMENT",
            description = "From when on: a day, a day and a time at the trap, or an instant (RFC 3339).")
    private String from;

    @Option(names = "--to", paramLabel = "MOMENT", description = "Until when; that moment itself is left out.")
    private String to;

    private final Surroundings surroundings;

    ExportCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        try (Store store = database.openExisting(surroundings)) {
            LineBook line = store.line();
            ZoneId zone = AskedTrap.on(line, trap).zone();
            Instant first = Optional.ofNullable(from)
                    .map(text -> Moment.read(text, zone))
                    .orElse(Instant.MIN);
            Instant last =
                    Optional.ofNullable(to).map(text -> Moment.read(text, zone)).orElse(Instant.MAX);
            SampleTable table = new SampleTable(surroundings.out());
            table.heading();
            for (Fitting fitting : line.fittingsIn(trap)) {
                Instant start = later(first, fitting.from());
                Instant end = earlier(last, fitting.until());
                if (start.isBefore(end)) {
                    store.samples().read(fitting.node(), start, end, sample -> table.row(fitting.node(), sample));
                }
            }
        }
        return Exit.DONE;
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    private static Instant earlier(Instant one, Instant other) {
        return one.isBefore(other) ? one : other;
    }
}
