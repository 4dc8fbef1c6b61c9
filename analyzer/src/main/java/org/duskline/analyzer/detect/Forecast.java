package org.duskline.analyzer.detect;

import java.util.Locale;
import org.duskline.analyzer.series.TrapSeries;

/**
 * The chance that a swarm follows while a trap is being scouted. A logistic regression on what the trap's own counter
 * shows: how many scouts there are now, and on how many of the four days before there were some. Its numbers come from
 * eight synthetic seasons of this project; docs/detection.md has its reliability on seasons it was not made from. It
 * knows the hour's scouts and little more, so it seldom says less than 5 % or more than 60 %.
 *
 * @param within24Hours chance of an arrival within a day, 0 to 1
 * @param within48Hours chance of an arrival within two days, 0 to 1
 */
public record Forecast(double within24Hours, double within48Hours) {
    private static final long HOUR = 3_600_000L;
    private static final long DAY = 24 * HOUR;
    private static final int DAYS = 4;

    /** Crossings a minute over an hour that make a scouted day. */
    private static final double SCOUTED_PER_MINUTE = 0.8;

    /** The forecast from what a trap's counter showed up to an index. */
    public static Forecast at(TrapSeries series, int at) {
        long now = series.timeMillis(at);
        double rate = Traffic.over(series, now - HOUR / 2, at).perMinute();
        int days = 0;
        for (int day = 1; day <= DAYS; day++) {
            days += busiestHour(series, now - day * DAY) > SCOUTED_PER_MINUTE ? 1 : 0;
        }
        return of(rate, days);
    }

    /**
     * @param perMinute crossings a minute over the last half hour
     * @param scoutedDays how many of the four days before were scouted
     */
    static Forecast of(double perMinute, int scoutedDays) {
        double scouts = Math.log(perMinute + 0.2);
        return new Forecast(
                chance(-2.3 + 0.48 * scouts + 0.2 * scoutedDays), chance(-1.95 + 0.48 * scouts + 0.27 * scoutedDays));
    }

    private static double chance(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }

    private static double busiestHour(TrapSeries series, long middle) {
        double most = 0;
        for (int hours = -6; hours <= 6; hours += 2) {
            long end = middle + hours * HOUR;
            int to = series.lastAt(end);
            if (to > 0 && end - series.timeMillis(to) < HOUR) {
                Traffic hour = Traffic.over(series, end - HOUR, to);
                most = hour.minutes() > 120 ? most : Math.max(most, hour.perMinute());
            }
        }
        return most;
    }

    /** In the keeper's words. */
    public String said() {
        return String.format(
                Locale.ROOT,
                "a swarm within a day: %.0f %%, within two: %.0f %%",
                100 * within24Hours,
                100 * within48Hours);
    }
}
