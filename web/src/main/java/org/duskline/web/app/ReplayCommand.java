package org.duskline.web.app;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.replay.Comparison;
import org.duskline.analyzer.replay.Comparison.Change;
import org.duskline.analyzer.replay.Comparison.Truth;
import org.duskline.analyzer.replay.Expectation;
import org.duskline.analyzer.replay.Past;
import org.duskline.analyzer.replay.Played;
import org.duskline.analyzer.replay.Replay;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.replay.ThresholdText;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.collector.store.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "replay",
        description = "Runs detection again over what is recorded, under other thresholds, and says what would have"
                + " been told otherwise. Changes nothing.")
final class ReplayCommand implements Callable<Integer> {
    enum Format {
        TABLE,
        JSON
    }

    private static final int SEASON_DAYS = 90;
    private static final int PERCENT = 100;
    private static final ObjectMapper JSON = new ObjectMapper();

    @Mixin
    private Standard standard;

    @Mixin
    private DatabaseOption database;

    @Option(
            names = "--from",
            paramLabel = "MOMENT",
            description = "From which receipt on: a day or a time (UTC), or an instant (RFC 3339).")
    private String from;

    @Option(names = "--to", paramLabel = "MOMENT", description = "Until which receipt; it is left out itself.")
    private String to;

    @Option(
            names = "--thresholds",
            paramLabel = "FILE",
            required = true,
            description = "The other thresholds as JSON, such as {\"moveInOdds\": 40}. The rest stays as it is.")
    private Path file;

    @Option(names = "--format", paramLabel = "FORMAT", description = "table or json. Without it, table.")
    private Format format = Format.TABLE;

    private final Surroundings surroundings;

    ReplayCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Instant first = moment(from, Instant.MIN);
        Instant last = moment(to, Instant.MAX);
        try (Store store = database.openExisting(surroundings)) {
            ThresholdBook book = ThresholdBook.open(store);
            Instant present = surroundings.clock().instant();
            Function<String, Thresholds> now =
                    trap -> book.inForce(trap, present).thresholds();
            String text = read();
            Function<String, Thresholds> other = trap -> otherThan(now.apply(trap), text);
            List<Answer> answers = AnswerLog.open(store).between(Instant.EPOCH, present);
            Replay replay = new Replay(past(store));
            Played before = run(replay, "As it is", now, first, last);
            Played after = run(replay, "Otherwise", other, first, last);
            Comparison comparison = Comparison.of(before, after, answers);
            Expectation was = Expectation.of(before, answers, SEASON_DAYS, 1);
            Expectation willBe = Expectation.of(after, answers, SEASON_DAYS, 1);
            surroundings
                    .out()
                    .print(format == Format.JSON ? json(comparison, was, willBe) : table(comparison, was, willBe));
        }
        return Exit.DONE;
    }

    private static Instant moment(String text, Instant without) {
        return Optional.ofNullable(text)
                .map(written -> Moment.read(written, ZoneOffset.UTC))
                .orElse(without);
    }

    private String read() {
        try {
            return Files.readString(file);
        } catch (IOException unread) {
            throw Failure.of("The thresholds " + file + " could not be read. Check the name and the rights.");
        }
    }

    private Thresholds otherThan(Thresholds base, String text) {
        try {
            return ThresholdText.read(text, base);
        } catch (IllegalArgumentException wrong) {
            throw Failure.askedWrongly(file + ": " + wrong.getMessage());
        }
    }

    private Past past(Store store) {
        try (Progress progress = new Progress(surroundings.err(), "Reading", "%", PERCENT)) {
            return Past.read(store, done -> progress.at(Math.round(done * PERCENT)), this::interrupted);
        }
    }

    private boolean interrupted() {
        return Thread.currentThread().isInterrupted();
    }

    private Played run(
            Replay replay, String task, Function<String, Thresholds> thresholds, Instant first, Instant last) {
        try (Progress progress = new Progress(surroundings.err(), task, "%", PERCENT)) {
            return replay.run(
                    thresholds,
                    first,
                    last,
                    (done, until, soFar) -> progress.at(Math.round(done * PERCENT)),
                    this::interrupted);
        }
    }

    private static String table(Comparison comparison, Expectation was, Expectation willBe) {
        StringBuilder text = new StringBuilder();
        comparison
                .differences()
                .forEach(one -> text.append(String.format(
                        Locale.ROOT,
                        "%-8s %-10s %-10s %-24s %s%s%n",
                        word(one.change()),
                        word(one.truth()),
                        one.kind().wireName(),
                        one.trap(),
                        one.onset(),
                        one.shift().isZero() ? "" : "  by " + one.shift().abs().toMinutes() + " min")));
        text.append(String.format(
                Locale.ROOT,
                "Real swarms missed %d, later %d, earlier %d, gained %d; false alarms gone %d, new %d.%n",
                comparison.moveIns(Change.LOST, Truth.SWARM),
                comparison.moveIns(Change.LATER, Truth.SWARM),
                comparison.moveIns(Change.EARLIER, Truth.SWARM),
                comparison.moveIns(Change.GAINED, Truth.SWARM),
                comparison.moveIns(Change.LOST, Truth.FALSE),
                comparison.moveIns(Change.GAINED, Truth.FALSE)));
        return text + expected("now", was) + expected("otherwise", willBe);
    }

    private static String expected(String when, Expectation expected) {
        return String.format(
                Locale.ROOT,
                "Expected %s: %.2f false alarms a trap and season of %d days (95 %% %.2f to %.2f, from %d quiet days),"
                        + " told %d min after the onset.%n",
                when,
                expected.perSeason(),
                SEASON_DAYS,
                expected.interval().low(),
                expected.interval().high(),
                expected.quietDays(),
                expected.medianDelay().toMinutes());
    }

    private static String json(Comparison comparison, Expectation was, Expectation willBe) {
        ObjectNode whole = JSON.createObjectNode();
        ArrayNode differences = whole.putArray("differences");
        comparison
                .differences()
                .forEach(one -> differences
                        .addObject()
                        .put("change", word(one.change()))
                        .put("was", word(one.truth()))
                        .put("kind", one.kind().wireName())
                        .put("trap", one.trap())
                        .put("onset", one.onset().toString())
                        .put("shiftSeconds", one.shift().toSeconds()));
        expected(whole.putObject("now"), was);
        expected(whole.putObject("otherwise"), willBe);
        return whole + "\n";
    }

    private static void expected(ObjectNode node, Expectation expected) {
        if (expected.quietDays() > 0) {
            node.put("falseAlarmsPerSeason", expected.perSeason())
                    .put("low", expected.interval().low())
                    .put("high", expected.interval().high());
        }
        node.put("quietDays", expected.quietDays())
                .put("medianDelaySeconds", expected.medianDelay().toSeconds());
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }
}
