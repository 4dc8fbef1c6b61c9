package org.duskline.analyzer.detect;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.stream.Stream;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.SwarmSize;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.trap.Fitted;

/**
 * The case for a swarm moving in at one moment, with the evidence for and against it.
 *
 * @param onsetMillis when it began
 * @param logOdds natural logarithm of the odds that it is a swarm
 * @param gainKg gain on the scale, NaN without one
 * @param netIn net bees inward, NaN without a counter
 * @param enteredNet the same with what blind lanes lost put back, NaN where nobody said how many lanes there are
 * @param baseKg the level before, NaN without a scale
 * @param evidence what speaks for and against, weightiest first
 * @param rivals probability of each explanation
 */
public record MoveInCase(
        long onsetMillis,
        double logOdds,
        double gainKg,
        double netIn,
        double enteredNet,
        double baseKg,
        double minutes,
        List<Evidence> evidence,
        Map<Rival, Double> rivals) {

    /**
     * Prior log odds that a swarm is entering at a given twenty minutes of a flight hour: 0.3 captures a site-month
     * ("Subtropical Apis mellifera swarming dynamics", Gulf coast 1988-93: 0.14 to 0.65) over some 200 flight hours is about 1 in 2,000.
     */
    private static final double PRIOR = -7.6;

    /** More crossings than scouts make on two days at one hour; foragers of a colony make many more: own choice. */
    private static final double BUSIEST_SCOUTS_PER_MINUTE = 30;

    /** A visit is written down a little after hands touched the trap; own choice. */
    private static final long HANDS_MILLIS = 20 * 60_000L;

    /** Weighs the case at an index; empty where neither sensor shows anything. */
    public static Optional<MoveInCase> at(
            TrapSeries series, int at, Fitted fitted, Thresholds thresholds, Surroundings surroundings) {
        Rush rush = fitted.hasCounter() ? Rush.inward(series, at) : Rush.inward(series, 0);
        boolean rushing = fitted.hasCounter() && rush.net() >= 60;
        if (!rushing && !(fitted == Fitted.SCALE && gainedLately(series, at))) {
            return Optional.empty();
        }
        Ramp ramp = fitted.hasScale() ? Ramp.upTo(series, at) : null;
        boolean weighed = ramp != null && ramp.known() && !Stuck.weight(series, at);
        if (fitted == Fitted.SCALE && (!weighed || ramp.gainKg() < 0.5 * thresholds.smallestSwarmKg())) {
            return Optional.empty();
        }
        Odds odds = new Odds(PRIOR);
        EnumMap<Rival, Double> against = new EnumMap<>(Rival.class);
        if (fitted.hasCounter()) {
            counts(odds, against, rush);
            lived(odds, rush, series, at);
        }
        if (weighed && fitted.hasCounter()) {
            WeightEvidence.agree(odds, rush, ramp);
        }
        if (weighed) {
            WeightEvidence.weigh(odds, against, ramp, fitted, thresholds);
        }
        long onset = fitted.hasCounter() ? rush.onsetMillis() : ramp.onsetMillis();
        hour(odds, surroundings, series.timeMillis(at), onset, thresholds);
        line(
                odds,
                against,
                surroundings,
                onset,
                series.timeMillis(at),
                weighed ? ramp.gainKg() : Double.NaN,
                fitted.hasCounter() ? rush.net() : Double.NaN);
        if (weighed && !fitted.hasCounter()) {
            WeightEvidence.beside(odds, ramp, series.timeMillis(at), surroundings);
        }
        keeper(odds, against, surroundings, onset, series.timeMillis(at), fitted.hasCounter());
        return Optional.of(new MoveInCase(
                onset,
                odds.logOdds(),
                weighed ? ramp.gainKg() : Double.NaN,
                fitted.hasCounter() ? rush.net() : Double.NaN,
                fitted.hasCounter()
                        ? LaneLoss.netIn(series, rush.onsetMillis(), at, surroundings.counterBlindSeconds())
                        : Double.NaN,
                weighed ? ramp.baseKg() : Double.NaN,
                (series.timeMillis(at) - onset) / 60_000.0,
                odds.weightiestFirst(),
                shares(odds.logOdds(), against)));
    }

    private static boolean gainedLately(TrapSeries series, int at) {
        long now = series.timeMillis(at);
        int before = series.lastAt(now - 75 * 60_000L);
        double old = series.median(TrapSeries.Quantity.WEIGHT, before - 2, before + 2);
        double late = series.median(TrapSeries.Quantity.WEIGHT, at - 2, at);
        return before < 0 || Double.isNaN(old) || late - old > 0.08;
    }

    private static void counts(Odds odds, Map<Rival, Double> against, Rush rush) {
        double excess = rush.net() - Math.max(0, rush.usualAsymmetry()) * rush.net() / Math.max(rush.asymmetry(), 0.01);
        odds.add(
                Odds.through(
                        Math.log(Math.max(excess, 1)),
                        Math.log(60),
                        -1,
                        Math.log(150),
                        2.5,
                        Math.log(300),
                        5,
                        Math.log(600),
                        7),
                "%.0f more in than out in %.0f min",
                rush.net(),
                rush.minutes());
        double symmetric = Odds.through(rush.asymmetry(), 0.05, -7, 0.15, -2, 0.25, 1.5, 0.35, 2.5, 0.9, 2.5, 0.96, -4);
        odds.add(symmetric, "%.0f %% of all crossings are net inward", 100 * rush.asymmetry());
        double surge = Odds.through(
                Math.log(Math.max(rush.surge(), 0.1)), 0, -5, Math.log(2), -1, Math.log(4), 2, Math.log(10), 4);
        odds.add(
                surge,
                "%.0f in a minute, %.1f times the busiest of the two hours before",
                rush.perMinute(),
                rush.surge());
        against.put(Rival.ROBBERS, rush.asymmetry() < 0.2 ? 1.0 : 0.1);
        against.put(Rival.RESTART, rush.asymmetry() > 0.93 ? 1.0 : 0.02);
        against.put(Rival.SCOUTS, rush.surge() < 3 ? 1.0 : 0.05);
    }

    /**
     * Foragers who hurry home before a storm look like a swarm, at a trap from which a colony has flown for days and flew
     * until now; where it was fetched since, nobody flew before the rush.
     */
    private static void lived(Odds odds, Rush rush, TrapSeries series, int at) {
        double usual = rush.surge() < 4 ? FormerDays.usualPerMinute(series, at) : 0;
        if (usual > BUSIEST_SCOUTS_PER_MINUTE) {
            odds.add(
                    Odds.through(usual, BUSIEST_SCOUTS_PER_MINUTE, 0, 2 * BUSIEST_SCOUTS_PER_MINUTE, -5)
                            * Odds.through(rush.surge(), 2, 1, 4, 0),
                    "usual at this hour: %.0f a minute, as where a colony lives already",
                    usual);
        }
    }

    private static void hour(Odds odds, Surroundings surroundings, long now, long onset, Thresholds thresholds) {
        double sun = surroundings.hoursAfterSunrise(onset);
        double left = surroundings.hoursBeforeSunset(onset);
        odds.add(
                Math.min(
                        Odds.through(sun, 0, -9, 1.5, -3, 3, 0, 4, 0.5),
                        Odds.through(left, -0.5, -9, 0.5, -4, 2, 0, 3, 0.5)),
                "%.1f h after sunrise, %.1f h before sunset",
                sun,
                left);
        double celsius = surroundings.outsideCelsius(now);
        if (!Double.isNaN(celsius)) {
            double floor = thresholds.flightCelsius();
            odds.add(
                    Odds.through(celsius, floor - 2, -8, floor, -4, floor + 3, -0.5, floor + 6, 0.5),
                    "%.0f C outside",
                    celsius);
        }
    }

    /** Bees come by themselves: kilos that came while the keeper was there are the keeper's. */
    private static void keeper(
            Odds odds, Map<Rival, Double> against, Surroundings surroundings, long onset, long now, boolean counted) {
        if (surroundings.keeperWasThere(onset - HANDS_MILLIS, now)) {
            odds.add(counted ? -2 : -6, "the keeper was at the trap");
            against.put(Rival.HANDS, 5.0);
        }
    }

    private static void line(
            Odds odds,
            Map<Rival, Double> against,
            Surroundings surroundings,
            long onset,
            long now,
            double gain,
            double netIn) {
        boolean counted = !Double.isNaN(netIn);
        double rain = surroundings.rain(now);
        // Rain makes kilos, but no bees; a swarm that is under way comes in with the first drops.
        double others = surroundings.neighboursGainKg(onset, now);
        double wetNats = counted
                ? Odds.through(Math.log(Math.max(netIn, 1)), Math.log(100), 8, Math.log(500), 2)
                : rainAlone(gain, others);
        odds.add(-wetNats * rain + 0.5 * (1 - rain), rain > 0.5 ? "it rains on the line" : "no rain on the line");
        against.put(Rival.RAIN, 0.02 + 5 * rain);
        if (Double.isNaN(gain)) {
            return;
        }
        if (!Double.isNaN(others)) {
            odds.add(
                    Odds.through(others / Math.max(gain, 0.05), 0.03, 0.5, 0.1, 0, 0.3, -5),
                    "the other scales gained %+.2f kg in that time",
                    others);
        }
    }

    /** What rain on the line weighs against a lone scale: little where it made nothing of that size elsewhere. */
    private static double rainAlone(double gain, double others) {
        return Double.isNaN(others) ? 8 : Odds.through(Math.max(others, 0.02) / gain, 0.02, 2.5, 0.06, 8);
    }

    private static Map<Rival, Double> shares(double logOdds, Map<Rival, Double> against) {
        double swarm = 1 / (1 + Math.exp(-logOdds));
        double sum = against.values().stream().mapToDouble(Double::doubleValue).sum();
        EnumMap<Rival, Double> shares = new EnumMap<>(Rival.class);
        shares.put(Rival.SWARM, swarm);
        against.forEach((rival, weight) -> shares.put(rival, (1 - swarm) * weight / Math.max(sum, 1e-9)));
        return shares;
    }

    /** The same case with one more piece of evidence. */
    public MoveInCase and(Evidence more) {
        List<Evidence> all = Stream.concat(evidence.stream(), Stream.of(more))
                .sorted(Comparator.comparingDouble((Evidence each) -> -Math.abs(each.logOdds())))
                .toList();
        Map<Rival, Double> others = new EnumMap<>(rivals);
        others.remove(Rival.SWARM);
        double sum = logOdds + more.logOdds();
        return new MoveInCase(onsetMillis, sum, gainKg, netIn, enteredNet, baseKg, minutes, all, shares(sum, others));
    }

    /** The swarm's size as far as it is in, from the scale or, without one, from the counter. */
    public SwarmSize size() {
        return ArrivedBees.size(gainKg, netIn, enteredNet);
    }

    /** In one line: "A swarm is moving in: +1.42 kg in 14 min, 2,310 more in than out". */
    public String said() {
        return "A swarm is moving in: " + numbers();
    }

    /** In one line, some days after: "A swarm came unnoticed, +1.42 kg in 14 min, and its foragers fly". */
    public String saidLate() {
        return "A swarm came unnoticed, " + numbers() + ", and its foragers fly";
    }

    private String numbers() {
        StringJoiner numbers = new StringJoiner(", ");
        if (!Double.isNaN(gainKg)) {
            numbers.add(String.format(Locale.ROOT, "%+.2f kg in %.0f min", gainKg, minutes));
        }
        if (!Double.isNaN(netIn)) {
            numbers.add(String.format(Locale.ROOT, "%,.0f more in than out", netIn));
        }
        return numbers.length() > 0 ? numbers.toString() : evidence.get(0).said();
    }
}
