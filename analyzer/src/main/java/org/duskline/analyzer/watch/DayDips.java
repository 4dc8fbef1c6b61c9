package org.duskline.analyzer.watch;

import java.util.Collection;
import java.util.Optional;
import org.duskline.analyzer.detect.DayDip;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.analyzer.stats.Robust;

/** Measures by how much a box was lighter on a day than in both nights around it, beside the empty boxes of the line. */
final class DayDips {
    private static final long HOUR = 3_600_000L;
    private static final long NIGHT_BEFORE = 10 * HOUR;
    private static final long NIGHT_AFTER = 12 * HOUR;
    private static final int ENOUGH_SCALES = 3;

    private DayDips() {}

    static Optional<DayDip> of(TrapWatch trap, Collection<TrapWatch> line, long noonMillis) {
        double own = kg(trap.series(), noonMillis);
        double[] others = line.stream()
                .filter(watch -> watch != trap && watch.fitted().hasScale())
                .filter(watch -> watch.emptyBetween(noonMillis - NIGHT_BEFORE, noonMillis + NIGHT_AFTER))
                .mapToDouble(watch -> kg(watch.series(), noonMillis))
                .filter(dip -> !Double.isNaN(dip))
                .toArray();
        return Double.isNaN(own) || others.length < ENOUGH_SCALES
                ? Optional.empty()
                : Optional.of(new DayDip(own, Robust.median(others), Robust.mad(others)));
    }

    /** A zero point that jumps lifts one night alone, so that the lighter night is the measure. */
    private static double kg(TrapSeries series, long noon) {
        double before = level(series, noon - NIGHT_BEFORE, noon - 7 * HOUR);
        double day = level(series, noon - 2 * HOUR, noon + 3 * HOUR);
        double after = level(series, noon + 9 * HOUR, noon + NIGHT_AFTER);
        return Math.min(before, after) - day;
    }

    private static double level(TrapSeries series, long fromMillis, long toMillis) {
        return series.median(Quantity.WEIGHT, series.firstAfter(fromMillis), series.lastAt(toMillis));
    }
}
