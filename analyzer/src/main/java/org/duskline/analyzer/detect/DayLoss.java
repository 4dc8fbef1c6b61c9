package org.duskline.analyzer.detect;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.stats.Robust;

/**
 * What an empty box lost from one night to the next, beside the other empty boxes of the line, which dry and gain alike.
 *
 * @param noonMillis the noon between both nights, Unix milliseconds
 * @param beganMillis the last full hour before a fifth of what it lost more than the others was gone, or six hours before noon
 *     where that was not seen; Unix milliseconds
 * @param fallKg what it lost; negative where it gained
 * @param othersFallKg what the others lost, their median
 * @param othersScatterKg how much those differ, as a standard deviation, robust
 * @param beforeKg where it stood the night before
 * @param afterKg where it stood the night after
 * @param largestFallKg the largest fall from one half hour to the next
 * @param evenShare share of the hours of the day in which it lost more than the others; NaN where too few were heard
 */
public record DayLoss(
        long noonMillis,
        long beganMillis,
        double fallKg,
        double othersFallKg,
        double othersScatterKg,
        double beforeKg,
        double afterKg,
        double largestFallKg,
        double evenShare) {
    /** The night before begins so long before noon, milliseconds. */
    public static final long NIGHT_BEFORE = 15 * DayPath.HOUR;

    /** The night after ends so long after noon, milliseconds. */
    public static final long NIGHT_AFTER = 16 * DayPath.HOUR;

    private static final int ENOUGH_SCALES = 3;
    private static final int ENOUGH_HOURS = 6;

    /** Less in an hour is the grain of cheap scales; own choice. */
    private static final double COUNTS_KG = 0.005;

    /** Less may be drift and noise of the morning; own choice. */
    private static final double BEGUN_SHARE = 0.2;

    /** The loss on the day around a noon; empty where this box or too few of the others were weighed in both nights. */
    public static Optional<DayLoss> of(TrapSeries own, List<TrapSeries> others, long noonMillis) {
        Optional<DayPath> path = DayPath.of(own, noonMillis);
        if (path.isEmpty()) {
            return Optional.empty();
        }
        List<DayPath> beside = others.stream()
                .flatMap(series -> DayPath.of(series, noonMillis).stream())
                .toList();
        return beside.size() < ENOUGH_SCALES ? Optional.empty() : Optional.of(beside(path.get(), beside, noonMillis));
    }

    private static DayLoss beside(DayPath own, List<DayPath> others, long noonMillis) {
        double[] falls = others.stream().mapToDouble(DayPath::fallKg).toArray();
        double othersFall = Robust.median(falls);
        double[] beyond = beyondByHour(own, others);
        return new DayLoss(
                noonMillis,
                noonMillis + DayPath.HOUR * began(beyond, own.fallKg() - othersFall),
                own.fallKg(),
                othersFall,
                Robust.mad(falls),
                own.beforeKg(),
                own.afterKg(),
                own.largestFallKg(),
                evenShare(beyond));
    }

    /** What it lost more than the others, kg. */
    public double beyondKg() {
        return fallKg - othersFallKg;
    }

    private static double[] beyondByHour(DayPath own, List<DayPath> others) {
        List<double[]> beside = others.stream().map(DayPath::lostByHourKg).toList();
        double[] beyond = own.lostByHourKg();
        for (int hour = 0; hour < beyond.length; hour++) {
            int at = hour;
            beyond[hour] -= Robust.median(beside.stream()
                    .mapToDouble(path -> path[at])
                    .filter(lost -> !Double.isNaN(lost))
                    .toArray());
        }
        return beyond;
    }

    /** The hour after noon. */
    private static int began(double[] beyond, double wholeKg) {
        return DayPath.FIRST_HOUR
                + IntStream.range(1, beyond.length)
                        .filter(hour -> beyond[hour] >= BEGUN_SHARE * wholeKg)
                        .map(hour -> hour - 1)
                        .findFirst()
                        .orElse(0);
    }

    private static double evenShare(double[] beyond) {
        double[] hourly = IntStream.range(1, beyond.length)
                .mapToDouble(hour -> beyond[hour] - beyond[hour - 1])
                .filter(lost -> !Double.isNaN(lost))
                .toArray();
        return hourly.length < ENOUGH_HOURS
                ? Double.NaN
                : Arrays.stream(hourly).filter(lost -> lost > COUNTS_KG).count() / (double) hourly.length;
    }
}
