package org.duskline.web.app;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.replay.Ballast;
import org.duskline.analyzer.replay.Cost;
import org.duskline.analyzer.replay.Past;
import org.duskline.analyzer.replay.Suggestion;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.replay.ThresholdText;
import org.duskline.analyzer.replay.Tuner;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.collector.store.Store;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
        name = "tune",
        description = "Searches for the thresholds that would have cost least on the answered move-ins, with synthetic"
                + " seasons as ballast, tests them on answers held back, and prints them as JSON. Adopts nothing.")
final class TuneCommand implements Callable<Integer> {
    private static final int PERCENT = 100;

    @Mixin
    private Standard standard;

    @Mixin
    private DatabaseOption database;

    @Option(names = "--missed-swarm", paramLabel = "COST", description = "What a missed swarm costs. Without it, 100.")
    private double missedSwarm = 100;

    @Option(names = "--wasted-drive", paramLabel = "COST", description = "What a wasted drive costs. Without it, 20.")
    private double wastedDrive = 20;

    @Option(names = "--hour-late", paramLabel = "COST", description = "What an hour's delay costs. Without it, 2.")
    private double hourLate = 2;

    @Option(names = "--trap", paramLabel = "TRAP", description = "One trap alone. Without it, the whole line.")
    private String trap;

    private final Surroundings surroundings;

    TuneCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Cost cost = cost();
        try (Store store = database.openExisting(surroundings)) {
            Instant present = surroundings.clock().instant();
            ThresholdBook book = ThresholdBook.open(store);
            checkTrap(store);
            List<Answer> answers = AnswerLog.open(store).between(Instant.EPOCH, present);
            Optional<String> one = Optional.ofNullable(trap);
            Thresholds now = one.map(name -> book.inForce(name, present).thresholds())
                    .orElseGet(() -> book.ofLine(present).thresholds());
            Suggestion suggestion = new Tuner(past(store), answers, ballast())
                    .suggest(
                            name -> book.inForce(name, present).thresholds(),
                            one,
                            now,
                            cost,
                            (sets, thresholds) -> surroundings
                                    .err()
                                    .println("Trying set " + sets + ": " + ThresholdText.write(thresholds)),
                            this::interrupted);
            surroundings.err().println(suggestion.words());
            surroundings.out().println(ThresholdText.write(suggestion.thresholds()));
        }
        return Exit.DONE;
    }

    private void checkTrap(Store store) {
        if (trap != null) {
            AskedTrap.on(store.line(), trap);
        }
    }

    private Past past(Store store) {
        try (Progress progress = new Progress(surroundings.err(), "Reading", "%", PERCENT)) {
            return Past.read(store, done -> progress.at(Math.round(done * PERCENT)), this::interrupted);
        }
    }

    private Ballast ballast() {
        try (Progress progress = new Progress(surroundings.err(), "Making seasons", "%", PERCENT)) {
            return Ballast.usual(done -> progress.at(Math.round(done * PERCENT)), this::interrupted);
        }
    }

    private boolean interrupted() {
        return Thread.currentThread().isInterrupted();
    }

    private Cost cost() {
        try {
            return new Cost(missedSwarm, wastedDrive, hourLate);
        } catch (IllegalArgumentException wrong) {
            throw Failure.askedWrongly(wrong.getMessage());
        }
    }
}
