package org.duskline.web.app;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.replay.Past;
import org.duskline.analyzer.replay.Replay;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.watch.Nearest;
import org.duskline.collector.store.Store;
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
            ThresholdBook book = ThresholdBook.open(store);
            Instant present = surroundings.clock().instant();
            Past past;
            try (Progress progress = new Progress(surroundings.err(), "Reading", "%", PERCENT)) {
                past = Past.read(store, done -> progress.at(Math.round(done * PERCENT)), () -> false);
            }
            answer(new Replay(past).whyNot(name -> book.inForce(name, present).thresholds(), trap, first, last));
        } catch (IllegalArgumentException wrong) {
            throw Failure.askedWrongly(wrong.getMessage());
        }
        return Exit.DONE;
    }

    private void answer(List<Nearest> nearest) {
        StringBuilder text = new StringBuilder();
        for (Nearest one : nearest) {
            text.append(one.kind().wireName());
            one.at()
                    .ifPresent(at -> text.append(String.format(
                            Locale.ROOT,
                            ": nearest at %s, %s (told from %.0f to 1 on)",
                            at,
                            odds(one.odds()),
                            one.needed())));
            text.append("\n  ").append(one.heldBack()).append('\n');
            for (Evidence piece : one.evidence()) {
                text.append(String.format(Locale.ROOT, "  %+5.1f  %s%n", piece.logOdds(), piece.said()));
            }
        }
        surroundings.out().print(text);
    }

    private static String odds(double odds) {
        return odds >= 1
                ? String.format(Locale.ROOT, "%,.0f to 1 for it", odds)
                : String.format(Locale.ROOT, "%,.0f to 1 against it", 1 / odds);
    }
}
