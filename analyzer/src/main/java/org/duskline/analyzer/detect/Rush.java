package org.duskline.analyzer.detect;

import org.duskline.analyzer.series.TrapSeries;

/**
 * What the entrance counter says about a rush of bees up to one moment. The onset is found as in a one-sided CUSUM (Page
 * 1954) of the net bees inward, with the reference value below: the last moment at which the sum was zero.
 *
 * @param onsetMillis when the rush began
 * @param minutes how long it has lasted
 * @param net net bees inward since then; outward for {@link #outward}
 * @param asymmetry net over all crossings, -1 to 1
 * @param perMinute crossings a minute in the rush's direction, since the onset
 * @param surge that rate over the busiest ten minutes of the two hours before the onset, in crossings a minute of the
 *     same direction plus one
 * @param usualAsymmetry net over all crossings in the six hours before the onset, 0 where there were few
 */
record Rush(
        long onsetMillis,
        double minutes,
        double net,
        double asymmetry,
        double perMinute,
        double surge,
        double usualAsymmetry) {
    /** Net bees a minute that a trap without a swarm may gain for a while; the CUSUM's reference value. Common practice. */
    private static final double REFERENCE_PER_MINUTE = 12;

    private static final long WINDOW_MILLIS = 40 * 60_000L;
    private static final long BEFORE_MILLIS = 120 * 60_000L;
    private static final long USUAL_MILLIS = 360 * 60_000L;
    private static final Rush NONE = new Rush(0, 0, 0, 0, 0, 0, 0);

    /** The rush inward that is on at an index; net 0 where there is none. */
    static Rush inward(TrapSeries series, int at) {
        return directed(series, at, 1);
    }

    /** The rush outward that is on at an index; net 0 where there is none. */
    static Rush outward(TrapSeries series, int at) {
        return directed(series, at, -1);
    }

    private static Rush directed(TrapSeries series, int at, int direction) {
        int first = Math.max(1, series.firstAfter(series.timeMillis(at) - WINDOW_MILLIS));
        int onset = onsetBefore(series, first, at, direction);
        return onset == at ? NONE : since(series, onset, at, direction);
    }

    private static int onsetBefore(TrapSeries series, int first, int at, int direction) {
        double sum = 0;
        int onset = first - 1;
        for (int i = first; i <= at; i++) {
            double minutes = (series.timeMillis(i) - series.timeMillis(i - 1)) / 60_000.0;
            double net = direction * (net(series, i) - net(series, i - 1));
            // A long silence hides its rates: its bees are not a rush.
            sum = minutes > 45 ? 0 : Math.max(0, sum + net - REFERENCE_PER_MINUTE * minutes);
            if (sum == 0) {
                onset = i;
            }
        }
        return onset;
    }

    private static Rush since(TrapSeries series, int onset, int at, int direction) {
        double minutes = (series.timeMillis(at) - series.timeMillis(onset)) / 60_000.0;
        double in = series.totalIn(at) - series.totalIn(onset);
        double out = series.totalOut(at) - series.totalOut(onset);
        double net = direction * (in - out);
        double rate = (direction > 0 ? in : out) / Math.max(minutes, 0.5);
        double busiest = busiestBefore(series, onset, direction);
        int six = Math.max(0, series.firstAfter(series.timeMillis(onset) - USUAL_MILLIS));
        double usualIn = series.totalIn(onset) - series.totalIn(six);
        double usualOut = series.totalOut(onset) - series.totalOut(six);
        double usual = usualIn + usualOut < 100 ? 0 : (usualIn - usualOut) / (usualIn + usualOut);
        return new Rush(
                series.timeMillis(onset),
                minutes,
                net,
                net / Math.max(in + out, 1),
                rate,
                rate / (busiest + 1),
                direction * usual);
    }

    private static double busiestBefore(TrapSeries series, int onset, int direction) {
        long from = series.timeMillis(onset) - BEFORE_MILLIS;
        double most = 0;
        int start = onset;
        for (int end = onset; end > 0 && series.timeMillis(end) > from; end--) {
            while (start > 0 && series.timeMillis(end) - series.timeMillis(start) < 600_000L) {
                start--;
            }
            double minutes = (series.timeMillis(end) - series.timeMillis(start)) / 60_000.0;
            double bees = direction > 0
                    ? series.totalIn(end) - series.totalIn(start)
                    : series.totalOut(end) - series.totalOut(start);
            if (minutes > 0) {
                most = Math.max(most, bees / minutes);
            }
        }
        return most;
    }

    private static double net(TrapSeries series, int i) {
        return series.totalIn(i) - series.totalOut(i);
    }
}
