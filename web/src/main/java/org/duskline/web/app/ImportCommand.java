package org.duskline.web.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.collect.Tally;
import org.duskline.collector.intake.RecordedStream;
import org.duskline.collector.intake.SpoiltLine;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.LineOfTraps;
import org.duskline.collector.wire.Message;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
        name = "import",
        description = "Reads recorded streams into a database and analyses them as if they arrived now. What is stored"
                + " already is not stored again.")
final class ImportCommand implements Callable<Integer> {
    private static final int BATCH = 1000;
    private static final int SPOILT_SHOWN = 5;

    @Mixin
    private Standard standard;

    @Mixin
    private DatabaseOption database;

    @Option(names = "--line", paramLabel = "FILE", description = "GeoJSON file with the traps and the nodes in them.")
    private Path line;

    @Parameters(
            paramLabel = "STREAM",
            arity = "1..*",
            description = "Recorded streams, plain or compressed, in the order in which they were recorded.")
    private List<Path> streams;

    private final Surroundings surroundings;

    ImportCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        List<SpoiltLine> spoilt = new ArrayList<>();
        long bytes = streams.stream().mapToLong(ImportCommand::size).sum();
        Optional<LineOfTraps> read = Optional.ofNullable(line).map(LineOfTraps::read);
        try (Store store = database.open(surroundings)) {
            read.ifPresent(traps ->
                    LineEntry.enter(traps, store.line(), surroundings.clock().instant()));
            Collector collector = new Collector(store);
            try (Progress progress = new Progress(surroundings.err(), "Reading", "MB", bytes)) {
                long before = 0;
                for (Path stream : streams) {
                    read(stream, collector, spoilt, progress, before);
                    before += size(stream);
                }
            }
            report(collector.tally(), spoilt);
            Analysis.catchUp(store, surroundings.clock().instant(), surroundings.err());
        }
        return Exit.DONE;
    }

    private static void read(
            Path file, Collector collector, List<SpoiltLine> spoilt, Progress progress, long bytesBefore) {
        try (RecordedStream stream = RecordedStream.open(file, spoilt::add)) {
            List<Message> batch = new ArrayList<>(BATCH);
            while (stream.hasNext()) {
                batch.add(stream.next());
                if (batch.size() == BATCH || !stream.hasNext()) {
                    collector.take(batch);
                    batch.clear();
                    progress.at(bytesBefore + stream.bytesRead());
                }
            }
        }
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            throw Failure.of("The recorded stream " + file + " cannot be read: check its name and rights.");
        }
    }

    private void report(Tally tally, List<SpoiltLine> spoilt) {
        say("%,d messages, %,d samples stored, %,d repeats.", tally.messages(), tally.samples(), tally.repeats());
        if (tally.merged() > 0 || tally.moved() > 0) {
            say("%,d samples completed earlier ones, %,d found their right time later.", tally.merged(), tally.moved());
        }
        if (tally.rejectedInAll() > 0) {
            say("%,d messages could not be decoded; they are kept as they came:", tally.rejectedInAll());
            tally.rejected().entrySet().stream()
                    .sorted((one, other) -> Long.compare(other.getValue(), one.getValue()))
                    .forEach(entry -> say(
                            "  %,7d for %s", entry.getValue(), entry.getKey().words()));
        }
        if (!spoilt.isEmpty()) {
            say("%,d lines were no messages and were passed over:", spoilt.size());
            spoilt.stream().limit(SPOILT_SHOWN).forEach(each -> say("  %s", each));
        }
    }

    private void say(String words, Object... values) {
        surroundings.err().println(String.format(Locale.ROOT, words, values));
    }
}
