package org.duskline.analyzer.detect;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.trap.Fitted;

/**
 * The case for robbers stripping old comb: crossings both ways for hours while the weight falls, in a
 * trap that no swarm has taken.
 *
 * @param onsetMillis when the heavy traffic began
 * @param logOdds natural logarithm of the odds
 * @param evidence what speaks for and against
 * @param rivals probability of each explanation
 */
public record RobbingCase(long onsetMillis, double logOdds, List<Evidence> evidence, Map<Rival, Double> rivals) {
    static final long WINDOW = 150 * 60_000L;
    private static final long TEN_MINUTES = 10 * 60_000L;
    private static final double PRIOR = -5;

    /**
     * Weighs the case at an index of an unoccupied trap with a counter; empty while the traffic is too light.
     *
     * @param emptySinceMillis since when the trap has been empty, so that a former colony's days are not taken for usual
     */
    public static Optional<RobbingCase> at(
            TrapSeries series,
            int at,
            Fitted fitted,
            long emptySinceMillis,
            Thresholds thresholds,
            Surroundings surroundings) {
        long now = series.timeMillis(at);
        double least = thresholds.robbersPerMinute();
        Traffic whole = Traffic.over(series, now - WINDOW, at);
        Traffic last = Traffic.over(series, now - WINDOW / 5, at);
        if (whole.perMinute() < least) {
            return Optional.empty();
        }
        boolean weighed = fitted.hasScale() && scaleSpeaks(series, at);
        if (!busy(series, at, weighed, least, whole, last)) {
            return Optional.empty();
        }
        Odds odds = new Odds(weighed ? PRIOR : UnweighedRobbers.PRIOR);
        if (weighed) {
            weigh(odds, series, at, whole, least, surroundings);
        } else {
            UnweighedRobbers.weigh(odds, series, at, whole, last, least, surroundings);
        }
        come(odds, series, at, weighed, emptySinceMillis, whole, least);
        hour(odds, surroundings, now);
        double robbers = odds.probability();
        return Optional.of(new RobbingCase(
                now - WINDOW,
                odds.logOdds(),
                odds.weightiestFirst(),
                Map.of(Rival.ROBBERS, robbers, Rival.SCOUTS, (1 - robbers) * 0.7, Rival.GLARE, (1 - robbers) * 0.3)));
    }

    /** A scale that is dead or stuck leaves the counter to itself. */
    private static boolean scaleSpeaks(TrapSeries series, int at) {
        return !Double.isNaN(fallKg(series, at, WINDOW)) && !Stuck.weight(series, at);
    }

    /** Robbers come both ways, evenly, at once, and where nobody flew on the days before. */
    private static void come(
            Odds odds, TrapSeries series, int at, boolean weighed, long emptySinceMillis, Traffic whole, double least) {
        odds.add(
                Odds.through(Math.abs(whole.asymmetry()), 0.1, weighed ? 1 : 0, 0.25, -0.5, 0.5, -4),
                "in %.0f, out %.0f",
                whole.in(),
                whole.out());
        double uneven = Scatter.unexplained(series, series.timeMillis(at) - WINDOW, at);
        odds.add(
                Odds.through(uneven, -0.05, 0.2, 0, 0, 0.05, -1.35, 0.15, -2, 0.5, -3),
                "the counts scatter by %.2f more than chance; robbers come evenly",
                Math.max(0, uneven));
        double usual = FormerDays.usualPerMinute(series, at, emptySinceMillis);
        odds.add(
                Odds.through(usual / Math.max(whole.perMinute(), 0.1), 0.3, 0, 0.6, -3, 1, -6),
                "usual at this hour: %.1f a minute; robbers are through in a day or two",
                usual);
        double start = Beginning.of(series, at, least).perMinute();
        odds.add(
                weighed ? Odds.through(start, 1.5, -2.5, 3, 0, 6, 2) : Odds.through(start, 1.5, -1.5, 3, -0.3, 6, 0.4),
                "it began with %.1f a minute within half an hour",
                start);
    }

    private static void hour(Odds odds, Surroundings surroundings, long now) {
        double sun = surroundings.hoursAfterSunrise(now);
        double left = surroundings.hoursBeforeSunset(now);
        odds.add(
                Math.min(Odds.through(sun, 0.5, -6, 2, 0.5), Odds.through(left, -0.5, -6, 0.5, 0.5)),
                "%.1f h after sunrise, %.1f h before sunset",
                sun,
                left);
        odds.add(-4 * surroundings.rain(now), "rain on the line");
    }

    private static boolean busy(TrapSeries series, int at, boolean weighed, double least, Traffic whole, Traffic last) {
        if (whole.minutes() > 240 || whole.minutes() < 120) {
            return false;
        }
        return weighed
                ? Math.min(whole.perMinute(), last.perMinute()) >= least && busyShare(series, at, 0.5 * least) >= 0.8
                : whole.perMinute() >= UnweighedRobbers.LEAST_FACTOR * least;
    }

    private static void weigh(
            Odds odds, TrapSeries series, int at, Traffic whole, double least, Surroundings surroundings) {
        odds.add(
                Odds.through(Math.log(whole.perMinute() / least), 0, 1, 1.1, 2.5, 2, 3.5),
                "%s",
                Crossings.said(whole.perMinute(), "two and a half hours"));
        double fall = fallKg(series, at, WINDOW, surroundings);
        double longFall = fallKg(series, at, 2 * WINDOW, surroundings);
        odds.add(
                Math.max(fell(fall), fell(0.7 * longFall)),
                "weight %+.2f kg over two and a half hours against the other scales",
                -fall);
    }

    /** Share of the window's ten-minute stretches with at least so many crossings a minute: robbers do not pause. */
    private static double busyShare(TrapSeries series, int at, double leastPerMinute) {
        int bins = (int) (WINDOW / TEN_MINUTES);
        int busy = 0;
        for (int bin = 0; bin < bins; bin++) {
            int end = series.lastAt(series.timeMillis(at) - bin * TEN_MINUTES);
            if (end > 0) {
                Traffic ten = Traffic.over(series, series.timeMillis(end) - TEN_MINUTES, end);
                busy += ten.perMinute() >= leastPerMinute ? 1 : 0;
            }
        }
        return busy / (double) bins;
    }

    private static double fell(double fallKg) {
        return Double.isNaN(fallKg) ? -3 : Odds.through(fallKg, 0, -6, 0.03, -2, 0.06, 2, 0.1, 5, 0.5, 5, 0.9, -4);
    }

    /** Fall beyond what sun and drying took from the other scales in the same time. */
    private static double fallKg(TrapSeries series, int at, long window, Surroundings surroundings) {
        long now = series.timeMillis(at);
        double others = surroundings.neighboursGainKg(now - window, now);
        return fallKg(series, at, window) + (Double.isNaN(others) ? 0 : Math.min(0, others));
    }

    private static double fallKg(TrapSeries series, int at, long window) {
        int old = series.lastAt(series.timeMillis(at) - window);
        return series.median(Quantity.WEIGHT, old - 4, old + 4) - series.median(Quantity.WEIGHT, at - 6, at);
    }
}
