package org.duskline.analyzer.detect;

import java.util.Optional;
import java.util.stream.IntStream;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/** How the weight of a box went over one day, from the night before to the night after, kg lost since the night before. */
final class DayPath {
    private static final long MINUTE = 60_000L;
    static final long HOUR = 60 * MINUTE;
    private static final long HALF_AN_HOUR = HOUR / 2;

    /** The hours after noon at which a path is read: robbers fly from early until dusk (common practice). */
    static final int FIRST_HOUR = -6;

    private static final int LAST_HOUR = 9;

    private final TrapSeries series;
    private final long noonMillis;
    private final double beforeKg;
    private final double afterKg;

    private DayPath(TrapSeries series, long noonMillis) {
        this.series = series;
        this.noonMillis = noonMillis;
        this.beforeKg = level(noonMillis - 15 * HOUR, noonMillis - 8 * HOUR);
        this.afterKg = level(noonMillis + 9 * HOUR, noonMillis + 16 * HOUR);
    }

    /** The path around a noon; empty where one of both nights was not weighed. */
    static Optional<DayPath> of(TrapSeries series, long noonMillis) {
        DayPath path = new DayPath(series, noonMillis);
        return Double.isNaN(path.fallKg()) ? Optional.empty() : Optional.of(path);
    }

    /** Lost from the night before to the night after, kg. */
    double fallKg() {
        return beforeKg - afterKg;
    }

    double afterKg() {
        return afterKg;
    }

    double beforeKg() {
        return beforeKg;
    }

    /** Lost by each hour of the day since the night before, kg; NaN where nothing was heard. */
    double[] lostByHourKg() {
        return IntStream.rangeClosed(FIRST_HOUR, LAST_HOUR)
                .mapToLong(hour -> noonMillis + hour * HOUR)
                .mapToDouble(at -> beforeKg - level(at - 10 * MINUTE, at + 20 * MINUTE))
                .toArray();
    }

    /** The largest fall from one half hour to the next, nights included, kg. */
    double largestFallKg() {
        double largest = 0;
        for (long at = noonMillis - 15 * HOUR + HALF_AN_HOUR; at < noonMillis + 16 * HOUR; at += 10 * MINUTE) {
            double fall = level(at - HALF_AN_HOUR, at) - level(at + 1, at + HALF_AN_HOUR);
            largest = fall > largest ? fall : largest;
        }
        return largest;
    }

    private double level(long fromMillis, long toMillis) {
        return series.median(Quantity.WEIGHT, series.firstAfter(fromMillis - 1), series.lastAt(toMillis));
    }
}
