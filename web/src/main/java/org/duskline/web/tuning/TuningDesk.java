package org.duskline.web.tuning;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.replay.Ballast;
import org.duskline.analyzer.replay.Comparison;
import org.duskline.analyzer.replay.Cost;
import org.duskline.analyzer.replay.Dial;
import org.duskline.analyzer.replay.Expectation;
import org.duskline.analyzer.replay.Past;
import org.duskline.analyzer.replay.Played;
import org.duskline.analyzer.replay.Replay;
import org.duskline.analyzer.replay.Suggestion;
import org.duskline.analyzer.replay.ThresholdBook;
import org.duskline.analyzer.replay.Tuner;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.collector.store.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Replays and searches on one thread, one wish at a time. What was decoded and run once is kept for the next wish. */
public final class TuningDesk implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(TuningDesk.class);

    /** What arrived since is read again once the last reading is so old. */
    private static final Duration FRESH = Duration.ofHours(6);

    private static final Duration FIRST_STRETCH = Duration.ofDays(14);
    private static final Duration AROUND = Duration.ofDays(1);
    private static final int REMEMBERED = 20;
    private static final Instant EVER = Instant.ofEpochMilli(Long.MAX_VALUE);

    private final Store store;
    private final ThresholdBook book;
    private final AnswerLog answers;
    private final InstantSource clock;
    private final Map<String, Job> seats = new ConcurrentHashMap<>();
    private final Map<Wish, String> predictions = new LinkedHashMap<>();
    private final ExecutorService worker = Executors.newSingleThreadExecutor(task -> {
        Thread thread = new Thread(task, "tuning");
        thread.setDaemon(true);
        return thread;
    });

    // What follows is touched by the worker alone.
    private Past past;
    private Instant readAt = Instant.MIN;
    private Played now;
    private Map<String, Thresholds> nowUnder = Map.of();
    private Ballast ballast;

    public TuningDesk(Store store, ThresholdBook book, AnswerLog answers, InstantSource clock) {
        this.store = store;
        this.book = book;
        this.answers = answers;
        this.clock = clock;
    }

    /** A wish that is being worked on, or waits. */
    public static final class Job {
        private final AtomicBoolean cancelled = new AtomicBoolean();

        public void cancel() {
            cancelled.set(true);
        }
    }

    private interface Work {
        void run(Job job);
    }

    /**
     * Tries other thresholds over everything recorded: the stretch around the loaded finding first, or the last weeks.
     *
     * @param seat who asks; their earlier wish is cancelled
     */
    public Job replay(String seat, Wish wish, Listener listener) {
        return take(seat, listener, job -> rerun(wish, listener, job));
    }

    /** Searches for thresholds that cost less. */
    public Job suggest(String seat, Optional<String> trap, Cost cost, Listener listener) {
        return take(seat, listener, job -> search(trap, cost, listener, job));
    }

    /** Reads the past ahead of the first wish. */
    public void warmUp() {
        Job job = new Job();
        worker.execute(() -> {
            try {
                read(Instant.MIN, (done, doing) -> {}, job);
            } catch (RuntimeException failed) {
                log.warn("Reading ahead for tuning failed: {}", failed.getMessage());
            }
        });
    }

    private Job take(String seat, Listener listener, Work work) {
        Job job = new Job();
        Job before = seats.put(seat, job);
        if (before != null) {
            before.cancel();
        }
        worker.execute(() -> {
            try {
                if (!job.cancelled.get()) {
                    work.run(job);
                }
            } catch (CancellationException left) {
                log.debug("A wish was left: {}", left.getMessage());
            } catch (RuntimeException failed) {
                log.error("Tuning failed", failed);
                listener.failed("It could not be worked out: " + failed.getMessage());
            } finally {
                seats.remove(seat, job);
                listener.over();
            }
        });
        return job;
    }

    private void rerun(Wish wish, Listener listener, Job job) {
        Instant around = wish.loaded().map(Finding::raised).orElse(Instant.MIN);
        read(around, listener, job);
        Instant present = clock.instant();
        List<Answer> given = answers.between(Instant.EPOCH, EVER);
        Function<String, Thresholds> holds = name -> book.inForce(name, present).thresholds();
        Function<String, Thresholds> other = wish.under(book, present);
        Replay replay = new Replay(past);
        Instant from = wish.loaded().isPresent() ? around.minus(AROUND) : present.minus(FIRST_STRETCH);
        Instant until = wish.loaded().isPresent() ? around.plus(AROUND) : present;
        Played nowThere = replay.run(holds, from, until, silent(), job.cancelled::get);
        Played thenThere = replay.run(other, from, until, silent(), job.cancelled::get);
        listener.brought(outcome(wish, nowThere, thenThere, given, false, from, until));
        Played before = asItIs(replay, holds, listener, job);
        Played after = replay.run(
                other,
                Instant.MIN,
                Instant.MAX,
                (done, reached, soFar) -> listener.at(done, "Under the other thresholds"),
                job.cancelled::get);
        Outcome outcome = outcome(wish, before, after, given, true, past.firstReceived(), past.lastReceived());
        remember(outcome);
        listener.brought(outcome);
    }

    private static Replay.Progress silent() {
        return (done, reached, soFar) -> {};
    }

    private static Outcome outcome(
            Wish wish, Played now, Played then, List<Answer> given, boolean whole, Instant from, Instant until) {
        return new Outcome(
                wish,
                Comparison.of(now, then, given),
                Expectation.of(now, given, Outcome.SEASON_DAYS, 1),
                Expectation.of(then, given, Outcome.SEASON_DAYS, 1),
                whole,
                from,
                until);
    }

    private Played asItIs(Replay replay, Function<String, Thresholds> holds, Listener listener, Job job) {
        Map<String, Thresholds> under = new LinkedHashMap<>();
        store.line().traps().forEach(trap -> under.put(trap.name(), holds.apply(trap.name())));
        if (now == null || !under.equals(nowUnder)) {
            now = replay.run(
                    holds,
                    Instant.MIN,
                    Instant.MAX,
                    (done, reached, soFar) -> listener.at(done, "As it is now"),
                    job.cancelled::get);
            nowUnder = under;
        }
        return now;
    }

    private void read(Instant needed, Listener listener, Job job) {
        Instant present = clock.instant();
        if (past == null || !past.ofSameLine()) {
            past = null;
            now = null;
            past = Past.read(store, done -> listener.at(done, "Reading what was recorded"), job.cancelled::get);
            readAt = present;
        } else if (needed.isAfter(past.lastReceived()) || present.isAfter(readAt.plus(FRESH))) {
            now = null;
            past.catchUp(done -> listener.at(done, "Reading what came since"), job.cancelled::get);
            readAt = present;
        }
    }

    private void search(Optional<String> trap, Cost cost, Listener listener, Job job) {
        read(Instant.MIN, listener, job);
        Instant present = clock.instant();
        if (ballast == null) {
            ballast = Ballast.usual(done -> listener.at(done, "Making synthetic seasons"), job.cancelled::get);
        }
        Thresholds start = trap.map(name -> book.inForce(name, present).thresholds())
                .orElseGet(() -> book.ofLine(present).thresholds());
        Suggestion suggestion = new Tuner(past, answers.between(Instant.EPOCH, EVER), ballast)
                .suggest(
                        name -> book.inForce(name, present).thresholds(),
                        trap,
                        start,
                        cost,
                        (sets, thresholds) -> listener.at(
                                Math.min(0.95, sets / (double) Suggestion.USUAL_SETS),
                                "Trying set " + sets + ": " + Dial.SWARM_KG.said(thresholds.smallestSwarmKg()) + ", "
                                        + Dial.MOVE_IN_ODDS.said(thresholds.moveInOdds())),
                        job.cancelled::get);
        listener.suggested(suggestion);
    }

    private void remember(Outcome outcome) {
        synchronized (predictions) {
            predictions.put(outcome.wish(), outcome.words());
            if (predictions.size() > REMEMBERED) {
                predictions.remove(predictions.keySet().iterator().next());
            }
        }
    }

    /** What the last whole replay of these thresholds foretold; empty where there was none. */
    public Optional<String> foretold(Thresholds thresholds, Optional<String> trap) {
        synchronized (predictions) {
            return predictions.entrySet().stream()
                    .filter(one -> one.getKey().thresholds().equals(thresholds)
                            && one.getKey().trap().equals(trap))
                    .map(Map.Entry::getValue)
                    .reduce((earlier, later) -> later);
        }
    }

    /** Ends what is being worked on. */
    @Override
    public void close() {
        seats.values().forEach(Job::cancel);
        worker.shutdownNow();
    }
}
