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
 * The case for robbers stripping old comb: heavy crossings both ways for an hour and a half while the weight falls, in a
 * trap that no swarm has taken.
 *
 * @param onsetMillis when the heavy traffic began
 * @param logOdds natural logarithm of the odds
 * @param evidence what speaks for and against
 * @param rivals probability of each explanation
 */
public record RobbingCase(long onsetMillis, double logOdds, List<Evidence> evidence, Map<Rival, Double> rivals) {
    private static final long WINDOW = 90 * 60_000L;
    private static final double PRIOR = -4;

    /** Weighs the case at an index of an unoccupied trap with a counter; empty while the traffic is too light. */
    public static Optional<RobbingCase> at(
            TrapSeries series, int at, Fitted fitted, Thresholds thresholds, Surroundings surroundings) {
        long now = series.timeMillis(at);
        Traffic long90 = Traffic.over(series, now - WINDOW, at);
        Traffic last30 = Traffic.over(series, now - WINDOW / 3, at);
        double rate = Math.min(long90.perMinute(), last30.perMinute());
        if (rate < thresholds.robbersPerMinute() || long90.minutes() > 180 || long90.minutes() < 60) {
            return Optional.empty();
        }
        Odds odds = new Odds(PRIOR);
        odds.add(
                Odds.through(Math.log(rate / thresholds.robbersPerMinute()), 0, 1, 1.1, 3.5, 2, 5),
                "%.0f crossings a minute for an hour and a half",
                rate);
        odds.add(
                Odds.through(Math.abs(long90.asymmetry()), 0.1, 1, 0.25, 0, 0.5, -4),
                "in %.0f, out %.0f",
                long90.in(),
                long90.out());
        if (fitted.hasScale()) {
            double fall = fallKg(series, at);
            odds.add(
                    Double.isNaN(fall) ? 0 : Odds.through(fall, -0.1, -4, 0, -1.5, 0.02, 0.5, 0.06, 3),
                    "weight %+.2f kg over two hours",
                    -fall);
        }
        odds.add(
                Odds.through(surroundings.hoursAfterSunrise(now), -0.5, -6, 0.5, 0),
                "%.1f h after sunrise",
                surroundings.hoursAfterSunrise(now));
        odds.add(
                Odds.through(ScoutCase.usualAtThisHour(series, at) / rate, 0.3, 0.5, 0.8, -2),
                "usual at this hour: %.1f a minute",
                ScoutCase.usualAtThisHour(series, at));
        odds.add(-4 * surroundings.rain(now), "rain on the line");
        double robbers = odds.probability();
        return Optional.of(new RobbingCase(
                now - WINDOW,
                odds.logOdds(),
                odds.weightiestFirst(),
                Map.of(Rival.ROBBERS, robbers, Rival.SCOUTS, (1 - robbers) * 0.7, Rival.GLARE, (1 - robbers) * 0.3)));
    }

    private static double fallKg(TrapSeries series, int at) {
        long now = series.timeMillis(at);
        int old = series.lastAt(now - 2 * 3_600_000L);
        double before = series.median(Quantity.WEIGHT, old - 4, old + 4);
        double after = series.median(Quantity.WEIGHT, at - 6, at);
        return before - after;
    }
}
