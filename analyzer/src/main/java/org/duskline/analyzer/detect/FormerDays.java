package org.duskline.analyzer.detect;

import org.duskline.analyzer.series.TrapSeries;

/** What passed at this hour on the days before. */
public final class FormerDays {
    private static final long HALF_HOUR = 30 * 60_000L;
    private static final long DAY = 24 * 3_600_000L;
    private static final int DAYS = 6;

    private FormerDays() {}

    /**
     * The second busiest half hour, crossings a minute, that any of the last six days had within an hour of this time of
     * day: what happens once in a week is not usual. 0 without such days.
     */
    public static double usualPerMinute(TrapSeries series, int at) {
        return usualPerMinute(series, at, Long.MIN_VALUE);
    }

    /** The same of the days since a time only: what a colony did that is gone since is not usual for the empty trap. */
    static double usualPerMinute(TrapSeries series, int at, long sinceMillis) {
        double highest = 0;
        double second = 0;
        for (int day = 1; day <= DAYS; day++) {
            double most = busiestNear(series, series.timeMillis(at) - day * DAY, sinceMillis);
            second = Math.max(second, Math.min(most, highest));
            highest = Math.max(highest, most);
        }
        return second;
    }

    private static double busiestNear(TrapSeries series, long then, long sinceMillis) {
        double most = 0;
        for (int shift = -2; shift <= 2; shift++) {
            long until = then + shift * HALF_HOUR;
            int end = series.lastAt(until);
            if (end > 0 && until - series.timeMillis(end) < HALF_HOUR && until - HALF_HOUR >= sinceMillis) {
                Traffic traffic = Traffic.over(series, series.timeMillis(end) - HALF_HOUR, end);
                most = traffic.minutes() > 120 ? most : Math.max(most, traffic.perMinute());
            }
        }
        return most;
    }
}
