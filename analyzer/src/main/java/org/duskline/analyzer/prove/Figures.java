package org.duskline.analyzer.prove;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.duskline.analyzer.stats.PoissonRate;
import org.duskline.analyzer.stats.Proportion;

/** The figures of a set of judged traps. Shares of nothing and quantiles of nothing are absent: null and NaN. */
public final class Figures {
    private final List<JudgedTrap> traps;

    Figures(List<JudgedTrap> traps) {
        this.traps = List.copyOf(traps);
    }

    Figures only(Predicate<JudgedTrap> kept) {
        return new Figures(traps.stream().filter(kept).toList());
    }

    List<JudgedTrap> judged() {
        return traps;
    }

    List<JudgedArrival> arrivals() {
        return traps.stream().flatMap(t -> t.arrivals().stream()).toList();
    }

    int traps() {
        return traps.size();
    }

    double days() {
        return traps.stream().mapToDouble(JudgedTrap::days).sum();
    }

    private double countedDays() {
        return traps.stream()
                .filter(t -> !t.fitted().equals("scale"))
                .mapToDouble(JudgedTrap::days)
                .sum();
    }

    private int sum(ToIntFunction<JudgedTrap> of) {
        return traps.stream().mapToInt(of).sum();
    }

    private static Proportion share(int part, int whole) {
        return whole == 0 ? null : new Proportion(part, whole);
    }

    private static PoissonRate rate(int events, double days) {
        return days > 0 ? new PoissonRate(events, days / 100) : null;
    }

    /** Caught, of the arrivals that were heard at all. */
    Proportion caught() {
        List<JudgedArrival> heard =
                arrivals().stream().filter(a -> a.heard() || a.found()).toList();
        return share((int) heard.stream().filter(JudgedArrival::found).count(), heard.size());
    }

    int neverHeard() {
        return (int) arrivals().stream().filter(a -> !a.heard()).count();
    }

    double[] delays() {
        return minutes(JudgedArrival::delayMinutes);
    }

    double[] afterHeard() {
        return Arrays.stream(minutes(JudgedArrival::afterHeardMinutes))
                .filter(m -> !Double.isNaN(m))
                .toArray();
    }

    private double[] minutes(ToDoubleFunction<JudgedArrival> of) {
        return arrivals().stream()
                .filter(JudgedArrival::found)
                .mapToDouble(of)
                .sorted()
                .toArray();
    }

    /** The quantile by linear interpolation between order statistics; NaN of nothing. */
    static double quantile(double[] sorted, double share) {
        if (sorted.length == 0) {
            return Double.NaN;
        }
        double place = share * (sorted.length - 1);
        int below = (int) place;
        int above = Math.min(sorted.length - 1, below + 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /** The exact interval of a quantile by order statistics: ranks by the binomial law. Infinite where it has no end. */
    static double[] quantileInterval(double[] sorted, double share) {
        int n = sorted.length;
        if (n == 0) {
            return new double[] {Double.NaN, Double.NaN};
        }
        BinomialDistribution binomial = BinomialDistribution.of(n, share);
        int low = binomial.inverseCumulativeProbability(0.025);
        int high = binomial.inverseCumulativeProbability(0.975) + 1;
        return new double[] {
            low == 0 ? Double.NEGATIVE_INFINITY : sorted[low - 1],
            high > n ? Double.POSITIVE_INFINITY : sorted[high - 1]
        };
    }

    Proportion sameEvening() {
        List<Boolean> asked = new ArrayList<>();
        arrivals().stream().map(JudgedArrival::evening).filter(e -> e != null).forEach(asked::add);
        return share((int) asked.stream().filter(e -> e).count(), asked.size());
    }

    int repeats() {
        return arrivals().stream().mapToInt(JudgedArrival::repeats).sum();
    }

    PoissonRate falseMoveIns() {
        return rate(sum(t -> JudgedTrap.sum(t.falseMoveIns())), days());
    }

    PoissonRate falseScoutings() {
        double days = countedDays();
        return rate(sum(t -> JudgedTrap.sum(t.falseScoutings())), days > 0 ? days : days());
    }

    /** Arrivals announced at least so many hours ahead, of those whose scouts allowed it. */
    Proportion announced(double hours) {
        List<JudgedArrival> fair = traps.stream()
                .filter(t -> !t.fitted().equals("scale"))
                .flatMap(t -> t.arrivals().stream())
                .filter(a -> a.truth().leadHours() >= hours)
                .toList();
        return share((int) fair.stream().filter(a -> a.warnedHours() >= hours).count(), fair.size());
    }

    Proportion episodesSeen() {
        return share(sum(JudgedTrap::episodesSeen), sum(JudgedTrap::episodes));
    }

    Proportion departures() {
        return share(sum(JudgedTrap::departuresFound), sum(JudgedTrap::departures));
    }

    PoissonRate departuresFalse() {
        return rate(sum(JudgedTrap::departuresFalse), days());
    }

    Proportion robbings() {
        return share(sum(JudgedTrap::robbingsFound), sum(JudgedTrap::robbings));
    }

    PoissonRate robbingsFalse() {
        return rate(sum(JudgedTrap::robbingsFalse), days());
    }

    Map<String, Integer> falseMoveInCauses() {
        return causes(JudgedTrap::falseMoveIns);
    }

    Map<String, Integer> falseScoutingCauses() {
        return causes(JudgedTrap::falseScoutings);
    }

    private Map<String, Integer> causes(Function<JudgedTrap, Map<String, Integer>> of) {
        Map<String, Integer> sum = new TreeMap<>();
        traps.forEach(t -> of.apply(t).forEach((cause, n) -> sum.merge(cause, n, Integer::sum)));
        return sum;
    }
}
