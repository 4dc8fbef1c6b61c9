package org.duskline.analyzer.detect;

import java.util.OptionalDouble;
import org.duskline.analyzer.series.TrapSeries;

/**
 * Crossings over a stretch of time.
 *
 * @param minutes how much of the stretch was covered by samples
 * @param in bees inward
 * @param out bees outward
 */
public record Traffic(double minutes, double in, double out) {

    private static final long HOUR = 3_600_000L;
    private static final long BUSY_HOURS = RobbingCase.WINDOW;
    private static final long THREE_DAYS = 72 * HOUR;

    /** The traffic after a time up to an index. */
    static Traffic over(TrapSeries series, long fromMillis, int to) {
        int from = Math.max(0, series.lastAt(fromMillis));
        double minutes = (series.timeMillis(to) - series.timeMillis(from)) / 60_000.0;
        return new Traffic(
                minutes, series.totalIn(to) - series.totalIn(from), series.totalOut(to) - series.totalOut(from));
    }

    private double bees() {
        return in + out;
    }

    double perMinute() {
        return minutes <= 0 ? 0 : bees() / minutes;
    }

    double asymmetry() {
        return (in - out) / Math.max(1, bees());
    }

    /**
     * The traffic of the busiest two and a half hours around a noon, from seven hours before to nine after; empty where nothing
     * was counted in three days, as a counter that is dead or stuck counts nothing.
     */
    public static OptionalDouble busiestPerMinute(TrapSeries series, long noonMillis) {
        long last = noonMillis + 9 * HOUR;
        if (series.lastAt(last) < 1
                || over(series, last - THREE_DAYS, series.lastAt(last)).bees() == 0) {
            return OptionalDouble.empty();
        }
        OptionalDouble busiest = OptionalDouble.empty();
        for (long end = noonMillis - 5 * HOUR; end <= last; end += HOUR / 6) {
            Traffic traffic = over(series, end - BUSY_HOURS, Math.max(0, series.lastAt(end)));
            if (traffic.minutes() >= 100 && traffic.minutes() <= 240) {
                busiest = OptionalDouble.of(Math.max(busiest.orElse(0), traffic.perMinute()));
            }
        }
        return busiest;
    }
}
