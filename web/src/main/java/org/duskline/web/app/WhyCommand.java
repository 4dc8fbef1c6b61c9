package org.duskline.web.app;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.replay.Stretch;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.watch.Nearest;
import org.duskline.collector.store.Store;
import org.duskline.web.page.WhyText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "why",
        description = "Says how near a stretch at a trap came to a move-in, to scouting, to robbing and to a departure,"
                + " and what held it back. Changes nothing.")
final class WhyCommand implements Callable<Integer> {
    private static final int PERCENT = 100;

    @Mixin
    private Standard standard;

    @Mixin
    private DatabaseOption database;

    @Option(names = "--trap", paramLabel = "NAME", required = true, description = "The trap's name.")
    private String trap;

    @Option(
            names = "--from",
            paramLabel = "MOMENT",
            required = true,
            description = "From when on: a day or a time at the trap, or an instant (RFC 3339).")
    private String from;

    @Option(
            names = "--to",
            paramLabel = "MOMENT",
            required = true,
            description = "Until when, at most a week later; it is left out itself.")
    private String to;

    private final Surroundings surroundings;

    WhyCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        try (Store store = database.openExisting(surroundings)) {
            ZoneId zone = AskedTrap.on(store.line(), trap).zone();
            Instant first = Moment.read(from, zone);
            Instant last = Moment.read(to, zone);
            Stretch stretch = new Stretch(first, last);
            List<Nearest> nearest;
            try (Progress progress = new Progress(surroundings.err(), "Reading", "%", PERCENT)) {
                nearest = stretch.nearest(
                        store,
                        ThresholdBook.open(store),
                        surroundings.clock().instant(),
                        new FindingLog(store),
                        trap,
                        done -> progress.at(Math.round(done * PERCENT)));
            }
            surroundings.out().print(WhyText.of(nearest));
        } catch (IllegalArgumentException wrong) {
            throw Failure.askedWrongly(wrong.getMessage());
        }
        return Exit.DONE;
    }
}
