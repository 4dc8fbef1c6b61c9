package org.duskline.analyzer.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.closed.ClosedLimits;
import org.duskline.analyzer.closed.Leak;
import org.duskline.analyzer.closed.Notice;
import org.duskline.analyzer.closed.Overheating;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.series.CleanSamples;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.visit.Closing;
import org.duskline.analyzer.visit.Visit;
import org.duskline.collector.wire.Sample;

/**
 * One trap from its closing on: bees that still pass, and heat. The whole closing is read anew each time, under the
 * visits as they stand; the ledger knows what was said before.
 */
final class ClosedWatch {
    /** A trap that is shut for longer was emptied by somebody who did not say so. */
    private static final Duration FOLLOWED = Duration.ofDays(7);

    private static final ClosedLimits LIMITS = ClosedLimits.USUAL;

    private ClosedWatch() {}

    /**
     * What the closings within reach of the series show.
     *
     * @param visits at the trap, as they stand
     * @param told the trap's findings that stand
     */
    static List<Signal> look(TrapSeries series, List<Visit> visits, List<Finding> told) {
        List<Signal> signals = new ArrayList<>();
        List<Closing> closings = Closing.of(visits);
        for (Closing closing : closings) {
            if (series.size() > 0 && until(closing) > series.timeMillis(0)) {
                leak(closing, samples(series, closing), signals);
                heat(closing, samples(series, closing), signals);
            }
        }
        withdraw(closings, told, signals);
        return signals;
    }

    private static long until(Closing closing) {
        Instant followed = closing.from().plus(FOLLOWED);
        return (closing.until().isBefore(followed) ? closing.until() : followed).toEpochMilli();
    }

    private static List<Sample> samples(TrapSeries series, Closing closing) {
        int from = series.firstAfter(closing.from().toEpochMilli()) - 1;
        return CleanSamples.of(series, from, until(closing));
    }

    private static void leak(Closing closing, List<Sample> samples, List<Signal> signals) {
        Leak.find(samples, closing.from(), LIMITS).ifPresent(notice -> {
            signals.add(signal(notice, Stage.RAISED, notice.raised(), notice.said()));
            ended(closing, notice, signals);
        });
    }

    private static void heat(Closing closing, List<Sample> samples, List<Signal> signals) {
        Instant from = closing.from();
        for (Optional<Notice> next = Overheating.find(samples, from, LIMITS); next.isPresent(); ) {
            Notice notice = next.get();
            signals.add(signal(notice, Stage.RAISED, notice.raised(), notice.said()));
            Optional<Sample> over = Overheating.over(samples, notice, LIMITS);
            if (over.isEmpty()) {
                ended(closing, notice, signals);
                return;
            }
            signals.add(signal(notice, Stage.ENDED, over.get().time(), "It has cooled down"));
            next = Overheating.find(samples, over.get().time(), LIMITS);
        }
    }

    private static void ended(Closing closing, Notice notice, List<Signal> signals) {
        closing.ended()
                .ifPresent(
                        visit -> signals.add(signal(notice, Stage.ENDED, visit.at(), "The trap is no longer closed")));
    }

    private static Signal signal(Notice notice, Stage stage, Instant at, String said) {
        return Signal.plain(
                notice.what().kind().orElseThrow(), stage, notice.onset().toEpochMilli(), at.toEpochMilli(), said);
    }

    /** What was told of a closing that, as the visits now stand, never was. */
    private static void withdraw(List<Closing> closings, List<Finding> told, List<Signal> signals) {
        told.stream()
                .filter(finding -> finding.kind() == Kind.LEAKING || finding.kind() == Kind.OVERHEATING)
                .filter(finding -> closings.stream().noneMatch(closing -> covers(closing, finding.onset())))
                .map(finding -> Signal.withdrawn(finding, "By the visits as they now stand the trap was not closed"))
                .forEach(signals::add);
    }

    private static boolean covers(Closing closing, Instant time) {
        return !time.isBefore(closing.from()) && !time.isAfter(closing.until());
    }
}
