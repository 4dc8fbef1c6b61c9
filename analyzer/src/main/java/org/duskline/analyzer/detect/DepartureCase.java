package org.duskline.analyzer.detect;

import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.trap.Fitted;

/**
 * The case for a colony leaving an occupied trap: a rush outward, the weight falling by most of the swarm, in flight
 * weather.
 *
 * @param onsetMillis when they began to leave
 * @param logOdds natural logarithm of the odds
 * @param fallKg fall of the weight, NaN without a scale
 * @param evidence what speaks for and against
 */
public record DepartureCase(long onsetMillis, double logOdds, double fallKg, List<Evidence> evidence) {
    private static final double PRIOR = -7;

    /** A scale alone can only say that the weight went in clean flight weather; hands would have swung it. */
    private static final double PRIOR_UNCOUNTED = -3.5;

    private static final long WINDOW = 45 * 60_000L;

    /**
     * Weighs the case at an index.
     *
     * @param swarmKg what the colony weighed on arrival
     */
    public static Optional<DepartureCase> at(
            TrapSeries series,
            int at,
            Fitted fitted,
            double swarmKg,
            Thresholds thresholds,
            Surroundings surroundings) {
        Rush rush = fitted.hasCounter() ? Rush.outward(series, at) : null;
        double fall = fitted.hasScale() ? fallKg(series, at) : Double.NaN;
        boolean fell = !Double.isNaN(fall) && fall > 0.4 * swarmKg;
        if ((rush == null || rush.net() < 80) && !(fitted == Fitted.SCALE && fell)) {
            return Optional.empty();
        }
        Odds odds = new Odds(rush == null ? PRIOR_UNCOUNTED : PRIOR);
        if (rush != null) {
            odds.add(
                    Odds.through(
                            Math.log(Math.max(rush.net(), 1)), Math.log(80), -1, Math.log(300), 4, Math.log(800), 6),
                    "%.0f more out than in within %.0f min",
                    rush.net(),
                    rush.minutes());
            odds.add(
                    Odds.through(rush.asymmetry(), 0.1, -5, 0.3, 1.5, 0.9, 1.5, 0.97, -3),
                    "%.0f %% of all crossings are net outward",
                    100 * rush.asymmetry());
            odds.add(
                    Odds.through(Math.log(Math.max(rush.surge(), 0.1)), 0, -4, 0.7, -0.5, 1.5, 2),
                    "%.1f times the busiest of the two hours before",
                    rush.surge());
        }
        if (fitted.hasScale()) {
            double share = Double.isNaN(fall) ? 0 : fall / Math.max(0.2, swarmKg);
            odds.add(Odds.through(share, 0.1, -7, 0.35, 0, 0.55, 4, 1.4, 4, 2, -4), "%+.2f kg", -fall);
            odds.add(swings(series, at) == 0 ? 2.5 : -5, "%d wild swings around it", swings(series, at));
        }
        double sun = surroundings.hoursAfterSunrise(series.timeMillis(at));
        double left = surroundings.hoursBeforeSunset(series.timeMillis(at));
        odds.add(
                Math.min(Odds.through(sun, 0, -7, 2, 0, 3, 0.5), Odds.through(left, -0.5, -7, 1, -1, 2, 0.5)),
                "%.1f h after sunrise",
                sun);
        odds.add(-5 * surroundings.rain(series.timeMillis(at)), "rain on the line");
        long onset = rush != null ? rush.onsetMillis() : series.timeMillis(at) - WINDOW / 2;
        return Optional.of(new DepartureCase(onset, odds.logOdds(), fall, odds.weightiestFirst()));
    }

    private static double fallKg(TrapSeries series, int at) {
        int old = series.lastAt(series.timeMillis(at) - WINDOW);
        if (old < 0) {
            return Double.NaN;
        }
        return series.median(Quantity.WEIGHT, old - 2, old + 2) - series.median(Quantity.WEIGHT, at - 2, at);
    }

    private static int swings(TrapSeries series, int at) {
        int from = Math.max(0, series.firstAfter(series.timeMillis(at) - WINDOW));
        double high = series.median(Quantity.WEIGHT, from, from + 4);
        double low = series.median(Quantity.WEIGHT, at - 2, at);
        double margin = Math.max(0.2, 0.3 * (high - low));
        int wild = 0;
        for (int i = from; i <= at; i++) {
            double weight = series.value(Quantity.WEIGHT, i);
            if (weight > high + margin || weight < low - margin) {
                wild++;
            }
        }
        return wild <= 1 ? 0 : wild;
    }
}
