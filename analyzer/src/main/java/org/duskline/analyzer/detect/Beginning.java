package org.duskline.analyzer.detect;

import org.duskline.analyzer.series.TrapSeries;

/**
 * How the spell of traffic that is on began. Scouts grow over an hour and more, after a few that came first; glare, ants,
 * robbers and a broken lane are there at once.
 *
 * @param startMillis when the spell began; it is followed back for ten hours at most
 * @param perMinute the busiest of the spell's first three ten-minute rates, crossings a minute
 * @param minutesToGrow from the spell's start until a ten-minute rate first passed the threshold
 * @param perMinuteBefore crossings a minute in the two hours before the spell
 * @param steepest the most by which a ten-minute rate rose within twenty minutes, crossings a minute: strays of every day
 *     can hide that what came after them was there at once
 */
record Beginning(long startMillis, double perMinute, double minutesToGrow, double perMinuteBefore, double steepest) {
    private static final long TEN_MINUTES = 10 * 60_000L;
    private static final int LONGEST_SPELL = 60;
    private static final double LEAST_QUIET_PER_MINUTE = 0.25;
    private static final double MOST_QUIET_PER_MINUTE = 0.6;

    /** Strays of every day are no beginning: what is so small a share of what passes now counts as quiet. */
    private static final double QUIET_SHARE = 0.15;

    private static final int QUIET_BINS = 3;

    /**
     * The beginning of the spell that is on at an index.
     *
     * @param least the rate that the spell has to pass, crossings a minute
     */
    static Beginning of(TrapSeries series, int at, double least) {
        long now = series.timeMillis(at);
        double[] rates = new double[LONGEST_SPELL];
        double still = quietPerMinute(series, at);
        int first = 0;
        int quiet = 0;
        for (int bin = 0; bin < LONGEST_SPELL && quiet < QUIET_BINS; bin++) {
            int end = series.lastAt(now - bin * TEN_MINUTES);
            if (end <= 0 || now - bin * TEN_MINUTES - series.timeMillis(end) > 3 * TEN_MINUTES) {
                break;
            }
            rates[bin] = Traffic.over(series, series.timeMillis(end) - TEN_MINUTES, end)
                    .perMinute();
            quiet = rates[bin] < still ? quiet + 1 : 0;
            first = quiet == 0 ? bin : first;
        }
        long start = now - (first + 1) * TEN_MINUTES;
        return new Beginning(
                start,
                busiest(rates, first),
                grown(rates, first, least),
                before(series, start),
                steepest(rates, first));
    }

    private static double quietPerMinute(TrapSeries series, int at) {
        double rate = Traffic.over(series, series.timeMillis(at) - 3 * TEN_MINUTES, at)
                .perMinute();
        return Math.max(LEAST_QUIET_PER_MINUTE, Math.min(MOST_QUIET_PER_MINUTE, QUIET_SHARE * rate));
    }

    private static double busiest(double[] rates, int first) {
        double most = 0;
        for (int bin = first; bin > first - 3 && bin >= 0; bin--) {
            most = Math.max(most, rates[bin]);
        }
        return most;
    }

    private static double steepest(double[] rates, int first) {
        double most = 0;
        for (int bin = 0; bin <= first; bin++) {
            double before = bin + 2 < rates.length ? rates[bin + 2] : 0;
            most = Math.max(most, rates[bin] - before);
        }
        return most;
    }

    private static double grown(double[] rates, int first, double least) {
        int bin = first;
        while (bin > 0 && rates[bin] < least) {
            bin--;
        }
        return (first - bin + 1) * 10.0;
    }

    private static double before(TrapSeries series, long start) {
        int end = series.lastAt(start);
        return end <= 0
                ? 0
                : Traffic.over(series, start - 12 * TEN_MINUTES, end).perMinute();
    }
}
