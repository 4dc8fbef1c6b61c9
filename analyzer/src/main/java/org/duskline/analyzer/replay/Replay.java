package org.duskline.analyzer.replay;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Supplier;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.replay.Past.Brought;
import org.duskline.analyzer.watch.InForce;
import org.duskline.analyzer.watch.LineWatch;
import org.duskline.analyzer.watch.Nearest;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;

/**
 * Runs the watch again over the past, under any thresholds, by the same path that live readings take. Nothing is written.
 * Safe for many threads as long as the past does not grow.
 */
public final class Replay {
    private static final int MESSAGES_AT_ONCE = 2000;

    /** As far back as a fold looks, with a day to settle. */
    static final Duration SETTLING = Duration.ofDays(10);

    private final Past past;

    public Replay(Past past) {
        this.past = past;
    }

    /** Told how far a run has come. */
    @FunctionalInterface
    public interface Progress {
        /**
         * @param done share of the whole, 0 to 1
         * @param until receipt of the last message that was folded
         * @param soFar what the run has told until here
         */
        void at(double done, Instant until, Supplier<Played> soFar);
    }

    /**
     * Runs over everything received in a stretch of time. The nine days before it are folded too, for the baselines, and
     * what they tell is left out.
     *
     * @param thresholds what holds at a trap, by its name
     * @param from first receipt, inclusive; {@link Instant#MIN} for all
     * @param until first receipt left out; {@link Instant#MAX} for all
     * @param cancelled asked between stretches
     * @throws CancellationException once {@code cancelled} says so
     */
    public Played run(
            Function<String, Thresholds> thresholds,
            Instant from,
            Instant until,
            Progress progress,
            BooleanSupplier cancelled) {
        Notes notes = new Notes(from, until);
        LineWatch watch = watchOverLine(thresholds, notes, trap -> List.of());
        int first = from.equals(Instant.MIN) ? 0 : firstSince(from.minus(SETTLING));
        int end = until.equals(Instant.MAX) ? past.size() : firstSince(until);
        for (int i = first; i < end; i++) {
            if ((i - first) % MESSAGES_AT_ONCE == 0) {
                if (cancelled.getAsBoolean()) {
                    throw new CancellationException("The replay was cancelled; nothing was changed.");
                }
                Instant reached = Instant.ofEpochMilli(past.receivedMillis(i));
                progress.at((i - first) / (double) (end - first), reached, notes::played);
            }
            take(watch, past.brought(i), notes);
        }
        return notes.played();
    }

    /**
     * How near a stretch at a trap came to each kind of finding, whether or not it was told.
     *
     * @param told what was told at the trap; of it only earlier swarms count that may still have lived there
     */
    List<Nearest> nearest(Function<String, Thresholds> thresholds, String trap, Stretch stretch, List<Finding> told) {
        Notes notes = new Notes(stretch.from(), stretch.heard());
        List<Finding> living = told.stream()
                .filter(finding -> mayLiveOn(finding, stretch.settling()))
                .toList();
        LineWatch watch = watchOverLine(thresholds, notes, name -> name.equals(trap) ? living : List.of());
        if (!watch.watches(trap)) {
            throw new IllegalArgumentException("No node was ever fitted to a trap named \"" + trap + "\".");
        }
        int end = firstSince(stretch.heard());
        for (int i = firstSince(stretch.settling()); i < end; i++) {
            take(watch, past.brought(i), notes);
        }
        return watch.nearest(trap, stretch.from(), stretch.until());
    }

    /** Whether a swarm told before may have been in the trap when the folding begins. */
    private boolean mayLiveOn(Finding finding, Instant begin) {
        return finding.kind() == Kind.MOVE_IN
                && finding.raised().isBefore(begin)
                && past.visits(finding.trap()).stream()
                        .noneMatch(visit -> visit.kind().emptiesTheTrap()
                                && visit.at().isAfter(finding.onset())
                                && visit.at().isBefore(begin));
    }

    /** Runs over everything recorded, under the same thresholds at every trap. */
    public Played run(Thresholds thresholds) {
        return run(trap -> thresholds, Instant.MIN, Instant.MAX, (done, until, soFar) -> {}, () -> false);
    }

    private int firstSince(Instant received) {
        int i = 0;
        while (i < past.size() && past.receivedMillis(i) < received.toEpochMilli()) {
            i++;
        }
        return i;
    }

    private LineWatch watchOverLine(
            Function<String, Thresholds> thresholds, Notes notes, Function<String, List<Finding>> known) {
        LineWatch watch = LineWatch.overThePast(trap -> new InForce(0, thresholds.apply(trap)));
        for (Trap trap : past.traps()) {
            fittedLast(trap).ifPresent(fitting -> {
                watch.watch(trap, fitting.fitted(), known.apply(trap.name()));
                past.counters(fitting.node()).forEach(block -> watch.counterIs(trap.name(), block));
                notes.told(watch.visited(trap.name(), past.visits(trap.name()), Instant.MIN));
            });
        }
        return watch;
    }

    private Optional<Fitting> fittedLast(Trap trap) {
        return past.fittings().stream()
                .map(FittingPast::fitting)
                .filter(fitting -> fitting.trap().equals(trap.name()))
                .max(Comparator.comparing(Fitting::from));
    }

    private void take(LineWatch watch, Brought brought, Notes notes) {
        FittingPast of = past.fittings().get(brought.owner());
        Fitting fitting = of.fitting();
        notes.heard(
                fitting.trap(),
                of.timeMillis(brought.first()),
                of.timeMillis(brought.first() + brought.count() - 1),
                brought.count());
        notes.told(watch.take(
                fitting.trap(),
                fitting.node(),
                fitting.fitted(),
                of.samples(brought),
                Instant.ofEpochMilli(brought.receivedMillis())));
    }
}
