package org.duskline.analyzer.detect;

import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/**
 * Something at the scale that is no swarm: hands, a jump of the zero point, water in the wood, a bird.
 *
 * @param kind what it looks like
 * @param onsetMillis when it began
 * @param words in the keeper's words, with a place for the figure in the manner of {@link String#format}
 * @param figure what stands in that place
 */
public record Nuisance(Kind kind, long onsetMillis, String words, Object figure) {
    private static final long QUARTER = 15 * 60_000L;
    private static final long HOUR = 3_600_000L;

    /** Whether hands or a fall shook the scale within the quarter hour up to an index. */
    public static Optional<Nuisance> disturbed(TrapSeries series, int at) {
        int from = Math.max(0, series.firstAfter(series.timeMillis(at) - QUARTER));
        double path = 0;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        double before = Double.NaN;
        int wild = 0;
        for (int i = from; i <= at; i++) {
            double weight = series.value(Quantity.WEIGHT, i);
            if (Double.isNaN(weight)) {
                continue;
            }
            double step = Double.isNaN(before) ? 0 : Math.abs(weight - before);
            path += step;
            wild += step > 0.4 ? 1 : 0;
            low = Math.min(low, weight);
            high = Math.max(high, weight);
            before = weight;
        }
        boolean shaken = high - low > 0.8 && wild >= 3 && path > 2 * (high - low);
        return shaken
                ? Optional.of(new Nuisance(
                        Kind.DISTURBED,
                        series.timeMillis(from),
                        "the weight swung by %.1f kg within a quarter hour",
                        high - low))
                : Optional.empty();
    }

    /** Whether the zero point jumped in one sample half an hour before an index and stayed. */
    public static Optional<Nuisance> tareShift(TrapSeries series, int at) {
        int jump = series.lastAt(series.timeMillis(at) - HOUR / 2);
        if (jump < 3 || at - jump < 3 || series.timeMillis(jump) - series.timeMillis(jump - 1) > HOUR / 3) {
            return Optional.empty();
        }
        double step = series.value(Quantity.WEIGHT, jump) - series.value(Quantity.WEIGHT, jump - 1);
        if (!(Math.abs(step) > 0.12)) {
            return Optional.empty();
        }
        double before = series.median(Quantity.WEIGHT, jump - 3, jump - 1);
        double after = series.median(Quantity.WEIGHT, jump + 1, at);
        double shift = after - before;
        boolean clean =
                Math.abs(shift - step) < 0.15 * Math.abs(step) && calm(series, jump, at, after, 0.2 * Math.abs(shift));
        return clean
                ? Optional.of(new Nuisance(
                        Kind.TARE_SHIFT,
                        series.timeMillis(jump),
                        "the scale jumped by %+.2f kg in one sample and stayed",
                        shift))
                : Optional.empty();
    }

    private static boolean calm(TrapSeries series, int from, int to, double level, double margin) {
        for (int i = from; i <= to; i++) {
            double weight = series.value(Quantity.WEIGHT, i);
            if (Math.abs(weight - level) > margin) {
                return false;
            }
        }
        return true;
    }

    /** Whether water has soaked in over the three hours up to an index. */
    public static Optional<Nuisance> soaked(TrapSeries series, int at, Surroundings surroundings) {
        long now = series.timeMillis(at);
        int old = series.lastAt(now - 3 * HOUR);
        double gain = series.median(Quantity.WEIGHT, at - 3, at) - series.median(Quantity.WEIGHT, old - 3, old + 3);
        return old >= 3 && gain > 0.1 && gain < 5 && surroundings.rain(now) >= 0.5
                ? Optional.of(
                        new Nuisance(Kind.SOAKED, now - 3 * HOUR, "%+.2f kg in three hours of rain on the line", gain))
                : Optional.empty();
    }

    /** Whether something light came and went often within the six hours up to an index, by day. */
    public static Optional<Nuisance> perching(TrapSeries series, int at) {
        int from = Math.max(2, series.firstAfter(series.timeMillis(at) - 6 * HOUR));
        int perches = 0;
        for (int i = from; i + 2 <= at; i++) {
            double before = series.value(Quantity.WEIGHT, i - 1);
            double up = series.value(Quantity.WEIGHT, i) - before;
            double back = series.value(Quantity.WEIGHT, i + 2) - before;
            boolean near = series.timeMillis(i + 2) - series.timeMillis(i - 1) < 4 * QUARTER;
            perches += near && up > 0.04 && up < 1.2 && Math.abs(back) < 0.2 * up ? 1 : 0;
        }
        return perches >= 6
                ? Optional.of(new Nuisance(
                        Kind.LODGER,
                        series.timeMillis(from),
                        "something light came and went %d times in six hours",
                        perches))
                : Optional.empty();
    }

    /** The words with the figure in its place. */
    public String said() {
        return String.format(Locale.ROOT, words, figure);
    }
}
