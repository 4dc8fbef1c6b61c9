package org.duskline.analyzer.detect;

import org.duskline.analyzer.series.TrapSeries;

/**
 * Crossings over a stretch of time.
 *
 * @param minutes how much of the stretch was covered by samples
 * @param in bees inward
 * @param out bees outward
 */
record Traffic(double minutes, double in, double out) {

    /** The traffic after a time up to an index. */
    static Traffic over(TrapSeries series, long fromMillis, int to) {
        int from = Math.max(0, series.lastAt(fromMillis));
        double minutes = (series.timeMillis(to) - series.timeMillis(from)) / 60_000.0;
        return new Traffic(
                minutes, series.totalIn(to) - series.totalIn(from), series.totalOut(to) - series.totalOut(from));
    }

    double perMinute() {
        return minutes <= 0 ? 0 : (in + out) / minutes;
    }

    double asymmetry() {
        return (in - out) / Math.max(1, in + out);
    }
}
