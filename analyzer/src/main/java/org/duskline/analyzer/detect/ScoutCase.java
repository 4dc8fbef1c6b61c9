package org.duskline.analyzer.detect;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.series.TrapSeries;

/**
 * The case for scouts at the entrance of an empty trap: crossings both ways, in flight weather, well above what this
 * trap shows at this hour, kept for half an hour.
 *
 * @param onsetMillis when the traffic began to rise
 * @param perMinute crossings a minute over the half hour
 * @param logOdds natural logarithm of the odds that these are scouts
 * @param evidence what speaks for and against
 * @param rivals probability of each explanation
 */
public record ScoutCase(
        long onsetMillis, double perMinute, double logOdds, List<Evidence> evidence, Map<Rival, Double> rivals) {
    private static final long HALF_HOUR = 30 * 60_000L;
    private static final long TEN_MINUTES = 10 * 60_000L;
    private static final double PRIOR = -5;

    /** With fewer than this the rise of a ten-minute rate is mostly chance; own choice. */
    private static final double MANY_PER_MINUTE = 3;

    /**
     * Weighs the case at an index; empty while the traffic is below the threshold.
     *
     * @param emptySinceMillis since when the trap has been empty, so that a former colony's days are not taken for usual
     */
    public static Optional<ScoutCase> at(
            TrapSeries series, int at, long emptySinceMillis, Thresholds thresholds, Surroundings surroundings) {
        long now = series.timeMillis(at);
        Traffic half = Traffic.over(series, now - HALF_HOUR, at);
        double rate = half.perMinute();
        if (rate < thresholds.scoutsPerMinute() || half.minutes() > 90 || half.minutes() < 20) {
            return Optional.empty();
        }
        Odds odds = new Odds(PRIOR);
        double usual = FormerDays.usualPerMinute(series, at, emptySinceMillis);
        many(odds, series, at, half, usual, thresholds.scoutsPerMinute());
        Beginning beginning = Beginning.of(series, at, thresholds.scoutsPerMinute());
        begun(odds, beginning, rate);
        evenly(odds, series, at, beginning.startMillis());
        byTheSun(odds, surroundings, now, beginning.startMillis());
        weather(odds, surroundings, now, thresholds.flightCelsius());
        return Optional.of(new ScoutCase(
                onset(series, at, rate),
                rate,
                odds.logOdds(),
                odds.weightiestFirst(),
                rivals(odds.probability(), usual, half)));
    }

    /** How many they are and have been, against what is usual and what counts as scouts, and whether they come both ways. */
    private static void many(Odds odds, TrapSeries series, int at, Traffic half, double usual, double least) {
        double rate = half.perMinute();
        double kept = keptPerMinute(series, at);
        Traffic quarter = Traffic.over(series, series.timeMillis(at) - HALF_HOUR / 2, at);
        odds.add(
                Odds.through(Math.log(rate / least), 0, 1, 1, 1.5),
                "%s (threshold %.1f)",
                Crossings.said(rate, "half an hour"),
                least);
        odds.add(
                Odds.through(kept / least, 0.3, -6, 0.6, -1.5, 0.9, 0.5),
                "never below %.1f a minute for fifty minutes",
                kept);
        odds.add(
                Odds.through(quarter.perMinute() / Math.max(rate, 0.01), 0.3, -3, 0.6, 0, 1, 0.5),
                "%.1f a minute in the last quarter",
                quarter.perMinute());
        odds.add(
                Odds.through(Math.log((rate + 0.1) / (usual + 0.1)), 0, -5, 0.7, -2, 1.4, 1, 2, 2),
                "usual at this hour: %.1f a minute",
                usual);
        odds.add(
                Odds.through(Math.abs(half.asymmetry()), 0.2, 1, 0.4, 0, 0.7, -4),
                "in %.0f, out %.0f",
                half.in(),
                half.out());
    }

    /** Scouts come one by one, after a few, and grow over an hour. */
    private static void begun(Odds odds, Beginning beginning, double rate) {
        odds.add(
                Odds.through(beginning.perMinute(), 1.5, 1.5, 2.5, 0, 4, -3, 8, -5),
                "it began with %.1f a minute within half an hour; scouts come one by one",
                beginning.perMinute());
        double atOnce = rate < MANY_PER_MINUTE ? 0 : beginning.steepest() / rate;
        odds.add(
                Odds.through(atOnce, 0.6, 0, 0.9, -3),
                "%.1f a minute more within twenty minutes; scouts grow over an hour",
                beginning.steepest());
        odds.add(
                Odds.through(beginning.minutesToGrow(), 10, -1.5, 20, -0.5, 30, 0.3, 45, 1),
                "it took %.0f minutes to grow",
                beginning.minutesToGrow());
        odds.add(
                Odds.through(beginning.perMinuteBefore(), 0.002, -1, 0.012, 0, 0.03, 0.6),
                "%.2f a minute in the two hours before; the first scouts are few",
                beginning.perMinuteBefore());
    }

    private static void evenly(Odds odds, TrapSeries series, int at, long startMillis) {
        long now = series.timeMillis(at);
        long from = Math.max(now - 6 * HALF_HOUR, Math.min(now - 2 * HALF_HOUR, startMillis));
        double uneven = Scatter.unexplained(series, from, at);
        odds.add(
                Odds.through(uneven, -0.3, 1, 0, 0, 0.2, -1.5, 0.6, -4, 1.5, -5),
                "the counts scatter by %.2f more than chance; a web swings in gusts, bees come evenly",
                Math.max(0, uneven));
    }

    private static void byTheSun(Odds odds, Surroundings surroundings, long now, long startMillis) {
        double sun = surroundings.hoursAfterSunrise(now);
        double left = surroundings.hoursBeforeSunset(now);
        odds.add(
                Math.min(Odds.through(sun, 0, -6, 1, -2, 2.5, 0.5), Odds.through(left, -0.2, -6, 1, 0, 2, 0.5)),
                "%.1f h after sunrise",
                sun);
        odds.add(Odds.through(left, 2, -1.5, 10, 0), "%.1f h before sunset; few scouts set out late", left);
        // By this day's sunrise, since what began before midnight has yesterday's behind it.
        double began = sun - (now - startMillis) / 3_600_000.0;
        odds.add(
                Odds.through(began, -2, -6, 0, -3, 1, 0),
                began < 0
                        ? "it began %.1f h before sunrise; ants do not wait for the sun"
                        : "it began %.1f h after sunrise; scouts wait for the warmth",
                Math.abs(began));
    }

    private static void weather(Odds odds, Surroundings surroundings, long now, double flightCelsius) {
        double celsius = surroundings.outsideCelsius(now);
        if (!Double.isNaN(celsius)) {
            odds.add(
                    Odds.through(celsius, flightCelsius - 1, -7, flightCelsius + 2, -1, flightCelsius + 4, 0.5),
                    "%.0f C outside",
                    celsius);
        }
        odds.add(-5 * surroundings.rain(now), "rain on the line");
    }

    /**
     * The second lowest of the last five ten-minute rates, crossings a minute: a burst of glare or of bees passing by is
     * over in twenty minutes, scouts keep coming.
     */
    private static double keptPerMinute(TrapSeries series, int at) {
        double lowest = Double.POSITIVE_INFINITY;
        double second = Double.POSITIVE_INFINITY;
        for (int bin = 0; bin < 5; bin++) {
            int end = series.lastAt(series.timeMillis(at) - bin * TEN_MINUTES);
            double rate = end <= 0
                    ? 0
                    : Traffic.over(series, series.timeMillis(end) - TEN_MINUTES, end)
                            .perMinute();
            second = Math.min(second, Math.max(lowest, rate));
            lowest = Math.min(lowest, rate);
        }
        return second;
    }

    private static Map<Rival, Double> rivals(double scouts, double usual, Traffic half) {
        double glare = usual > 0.5 ? 3 : 1;
        double lanes = Math.abs(half.asymmetry()) > 0.5 ? 3 : 0.3;
        double sum = glare + lanes + 2;
        double rest = 1 - scouts;
        return Map.of(
                Rival.SCOUTS, scouts,
                Rival.GLARE, rest * glare / sum,
                Rival.RESTART, rest * lanes / sum,
                Rival.ANTS, rest / sum,
                Rival.ROBBERS, rest / sum);
    }

    private static long onset(TrapSeries series, int at, double rate) {
        int end = at;
        while (end > 0) {
            long time = series.timeMillis(end);
            Traffic ten = Traffic.over(series, time - 600_000L, end);
            if (ten.perMinute() < 0.3 * rate || series.timeMillis(at) - time > 3 * 3_600_000L) {
                break;
            }
            end--;
        }
        return series.timeMillis(end);
    }
}
