package org.duskline.analyzer.detect;

import org.duskline.analyzer.series.TrapSeries;

/**
 * What a counter alone says for and against robbers. They are there early and until dusk, many, at once and evenly; ants
 * walk through the night and mill about, a low sun is through in an hour, scouts grow. The size of each piece was set on
 * sixteen synthetic seasons of this project.
 */
final class UnweighedRobbers {
    /** Fewer crossings than this many times the threshold are not weighed without a scale; own choice. */
    static final double LEAST_FACTOR = 4.0 / 3;

    /** One in twelve: of the days with so much traffic one in eight was robbed, in the seasons the pieces were set on. */
    static final double PRIOR = -2.5;

    private static final long TEN_MINUTES = 10 * 60_000L;
    private static final long HOUR = 6 * TEN_MINUTES;
    private static final long DAY = 24 * HOUR;
    private static final int LONGEST = 96;
    private static final int MOST_PAUSES = 3;
    private static final double PAUSE_SHARE = 0.4;
    private static final double HOURS_BEFORE_SUNRISE = 1.5;

    private UnweighedRobbers() {}

    /**
     * @param whole the traffic of the window
     * @param last the traffic of its last fifth
     * @param robbersPerMinute the keeper's threshold, crossings a minute
     */
    static void weigh(
            Odds odds,
            TrapSeries series,
            int at,
            Traffic whole,
            Traffic last,
            double robbersPerMinute,
            Surroundings surroundings) {
        long now = series.timeMillis(at);
        odds.add(
                Odds.through(Math.log(whole.perMinute() / robbersPerMinute), 0, 3, 0.7, 3.4, 1.4, 3.9, 2.1, 4.7),
                "%s",
                Crossings.said(whole.perMinute(), "two and a half hours"));
        odds.add(
                Odds.through(last.perMinute() / whole.perMinute(), 0.2, -1, 1, 0),
                "%.1f a minute in the last half hour",
                last.perMinute());
        double lopsided = Scatter.lopsided(series, now - RobbingCase.WINDOW, at);
        odds.add(
                Odds.through(lopsided, 0.5, 0.4, 1, 0, 1.4, -0.6, 2, -1.6),
                "in and out differ %.1f times as much as by chance",
                lopsided);
        double hours = busyHours(series, at, robbersPerMinute, surroundings);
        odds.add(
                Odds.through(hours, 2.5, 0, 4, 0.5, 6, 1.2, 8, 1.8, 12, 2),
                "busy for %.1f hours of this day; ants and a low sun are through sooner",
                hours);
        double sun = surroundings.hoursAfterSunrise(now);
        double began = sun - hoursOnEnd(series, at, PAUSE_SHARE * whole.perMinute());
        odds.add(
                Odds.through(began, -4, -4, -1, -2.3, 0, 0, 1, -0.3, 2, -1.2, 8, -2),
                began < 0
                        ? "it began %.1f h before sunrise; ants do not wait for the sun"
                        : "it began %.1f h after sunrise; robbers are early",
                Math.abs(began));
        double left = surroundings.hoursBeforeSunset(now);
        odds.add(
                Odds.through(left, -1, 0.8, 0, 0.6, 1, 0),
                left < 0 ? "still busy %.1f h after sunset" : "still busy %.1f h before sunset",
                Math.abs(left));
        double yesterday = yesterdayPerMinute(series, now);
        odds.add(
                Odds.through(
                        Math.log((yesterday + 0.2) / whole.perMinute()), -4, 0.4, -2, -0.5, -1, -0.5, 0, 0.4, 1, 0.8),
                "%.1f a minute at this hour yesterday; robbers were not there yet or were as many, scouts were fewer",
                yesterday);
        double celsius = surroundings.outsideCelsius(now);
        if (!Double.isNaN(celsius)) {
            odds.add(Odds.through(celsius, 6, -2.4, 12, 0), "%.0f C outside", celsius);
        }
    }

    /** Crossings a minute in the two hours around this time yesterday; 0 where nothing was heard. */
    private static double yesterdayPerMinute(TrapSeries series, long now) {
        long until = now - DAY + HOUR;
        int end = series.lastAt(until);
        return end <= 0 || until - series.timeMillis(end) > HOUR
                ? 0
                : Traffic.over(series, until - 2 * HOUR, end).perMinute();
    }

    /** Hours since before this day's sunrise in which at least so many passed, in stretches of ten minutes. */
    private static double busyHours(TrapSeries series, int at, double leastPerMinute, Surroundings surroundings) {
        double day = surroundings.hoursAfterSunrise(series.timeMillis(at)) + HOURS_BEFORE_SUNRISE;
        int bins = (int) Math.max(RobbingCase.WINDOW / TEN_MINUTES, Math.min(LONGEST, Math.round(6 * day)));
        int busy = 0;
        for (int bin = 0; bin < bins; bin++) {
            busy += perMinute(series, at, bin) >= leastPerMinute ? 1 : 0;
        }
        return busy / 6.0;
    }

    /** For how many hours it has been so busy, but for pauses of half an hour. */
    private static double hoursOnEnd(TrapSeries series, int at, double leastPerMinute) {
        int first = 0;
        int pauses = 0;
        for (int bin = 0; bin < LONGEST && pauses <= MOST_PAUSES; bin++) {
            boolean busy = perMinute(series, at, bin) >= leastPerMinute;
            first = busy ? bin + 1 : first;
            pauses = busy ? 0 : pauses + 1;
        }
        return first / 6.0;
    }

    /** Crossings a minute in the ten minutes that ended so many times ten minutes ago; 0 where nothing was heard. */
    private static double perMinute(TrapSeries series, int at, int bin) {
        long until = series.timeMillis(at) - bin * TEN_MINUTES;
        int end = series.lastAt(until);
        return end <= 0 || until - series.timeMillis(end) > 3 * TEN_MINUTES
                ? 0
                : Traffic.over(series, series.timeMillis(end) - TEN_MINUTES, end)
                        .perMinute();
    }
}
