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
        this.beforeKg = night(noonMillis - DayLoss.NIGHT_BEFORE, noonMillis - 8 * HOUR);
        this.afterKg = night(noonMillis + 9 * HOUR, noonMillis + DayLoss.NIGHT_AFTER);
    }

    /** The path around a noon; empty where half of one of both nights was not heard of. */
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

    /** The largest fall from one half hour to the next that was heard of, nights included, kg; what came in a silence counts whole. */
    double largestFallKg() {
        double largest = 0;
        double last = Double.NaN;
        for (long at = noonMillis - DayLoss.NIGHT_BEFORE + HALF_AN_HOUR;
                at < noonMillis + DayLoss.NIGHT_AFTER;
                at += 10 * MINUTE) {
            double before = level(at - HALF_AN_HOUR, at);
            last = Double.isNaN(before) ? last : before;
            double fall = last - level(at + 1, at + HALF_AN_HOUR);
            largest = fall > largest ? fall : largest;
        }
        return largest;
    }

    /** One reading in the evening is no night: dew and cold are still to come. */
    private double night(long fromMillis, long toMillis) {
        int first = series.firstAfter(fromMillis - 1);
        int last = series.lastAt(toMillis);
        boolean heard =
                last > first && series.timeMillis(last) - series.timeMillis(first) >= (toMillis - fromMillis) / 2;
        return heard ? series.median(Quantity.WEIGHT, first, last) : Double.NaN;
    }

    private double level(long fromMillis, long toMillis) {
        return series.median(Quantity.WEIGHT, series.firstAfter(fromMillis - 1), series.lastAt(toMillis));
    }
}
