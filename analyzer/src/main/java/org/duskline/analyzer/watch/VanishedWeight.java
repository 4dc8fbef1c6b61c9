package org.duskline.analyzer.watch;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.duskline.analyzer.closed.ClosedLimits;
import org.duskline.analyzer.closed.Gone;
import org.duskline.analyzer.closed.Gone.Handled;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.series.CleanSamples;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.wire.Sample;

/** One trap whose weight may vanish with its box while nobody said that they were there. */
final class VanishedWeight {
    /** Visits are written down a little after the work, and sooner than the box is back or on the road; own choice. */
    private static final Duration HANDS_BEFORE = Duration.ofMinutes(90);

    private static final Duration HANDS_AFTER = Duration.ofMinutes(45);

    private static final int LOOKED_BACK = 60;
    private static final int JUDGED_BACK = 120;
    private static final int LEVEL_SAMPLES = 6;
    private static final ClosedLimits LIMITS = ClosedLimits.USUAL;

    private VanishedWeight() {}

    /**
     * What a changed stretch of the series shows.
     *
     * @param changedMillis from when on the series changed
     * @param visits at the trap, as they stand
     * @param told the trap's findings that stand
     */
    static List<Signal> look(TrapSeries series, long changedMillis, List<Visit> visits, List<Finding> told) {
        List<Signal> signals = new ArrayList<>();
        List<Handled> handled = visits.stream().map(VanishedWeight::handled).toList();
        int dropped = firstDrop(series, series.firstAfter(changedMillis - 1));
        if (dropped >= 0) {
            List<Sample> samples = CleanSamples.of(series, dropped - JUDGED_BACK, Long.MAX_VALUE);
            Gone.find(samples, Double.NaN, handled, LIMITS)
                    .filter(notice -> hangs(visits, notice.onset()))
                    .ifPresent(notice -> signals.add(Signal.plain(
                            Kind.GONE,
                            Stage.RAISED,
                            notice.onset().toEpochMilli(),
                            notice.raised().toEpochMilli(),
                            notice.said())));
        }
        told.stream()
                .filter(finding -> finding.kind() == Kind.GONE)
                .forEach(finding -> settle(series, finding, handled, signals));
        return signals;
    }

    /** A box that was fetched or taken down is not missed. */
    private static boolean hangs(List<Visit> visits, Instant at) {
        return visits.stream()
                .filter(visit -> !visit.at().isAfter(at))
                .filter(visit -> visit.kind() == VisitKind.SET || visit.kind().emptiesTheTrap())
                .max(Comparator.comparing(Visit::at))
                .map(Visit::kind)
                .filter(kind -> kind == VisitKind.COLLECTED || kind == VisitKind.TAKEN_DOWN)
                .isEmpty();
    }

    private static void settle(TrapSeries series, Finding finding, List<Handled> handled, List<Signal> signals) {
        long onset = finding.onset().toEpochMilli();
        if (handled.stream().anyMatch(each -> each.covers(finding.onset()))) {
            signals.add(Signal.withdrawn(finding, "Somebody was at the trap then, as a visit recorded since says"));
        } else if (series.size() > 0 && series.timeMillis(0) < onset && isBack(series, onset)) {
            signals.add(Signal.plain(
                    Kind.GONE, Stage.ENDED, onset, series.timeMillis(series.size() - 1), "The weight is back"));
        }
    }

    private static boolean isBack(TrapSeries series, long onset) {
        int before = series.firstAfter(onset - 1) - 1;
        int last = series.size() - 1;
        double level = series.median(Quantity.WEIGHT, before - 2 * LEVEL_SAMPLES + 1, before);
        double now = series.median(Quantity.WEIGHT, Math.max(before + 1, last - LEVEL_SAMPLES + 1), last);
        return last - before > LEVEL_SAMPLES && level - now < LIMITS.goneKg() / 2;
    }

    /** Cheap, since every sample of a season passes here: -1 where no weight is as far below a recent one. */
    private static int firstDrop(TrapSeries series, int from) {
        for (int i = Math.max(1, from); i < series.size(); i++) {
            double weight = series.value(Quantity.WEIGHT, i);
            for (int back = i - 1; back >= Math.max(0, i - LOOKED_BACK); back--) {
                if (series.value(Quantity.WEIGHT, back) - weight >= LIMITS.goneKg()) {
                    return i;
                }
            }
        }
        return -1;
    }

    private static Handled handled(Visit visit) {
        return new Handled(visit.at().minus(HANDS_BEFORE), visit.at().plus(HANDS_AFTER));
    }
}
