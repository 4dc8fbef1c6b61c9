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
        double fallKg,
        double othersFallKg,
        double othersScatterKg,
        double beforeKg,
        double afterKg,
        double largestFallKg,
        double evenShare) {
    private static final int ENOUGH_SCALES = 3;
    private static final int ENOUGH_HOURS = 6;

    /** Less in an hour is the grain of cheap scales; own choice. */
    private static final double COUNTS_KG = 0.005;

    /** The loss on the day around a noon; empty where this box or too few of the others were weighed in both nights. */
    public static Optional<DayLoss> of(TrapSeries own, List<TrapSeries> others, long noonMillis) {
        List<DayPath> beside = others.stream()
                .flatMap(series -> DayPath.of(series, noonMillis).stream())
                .toList();
        return DayPath.of(own, noonMillis)
                .filter(path -> beside.size() >= ENOUGH_SCALES)
                .map(path -> {
                    double[] falls =
                            beside.stream().mapToDouble(DayPath::fallKg).toArray();
                    return new DayLoss(
                            noonMillis,
                            path.fallKg(),
                            Robust.median(falls),
                            Robust.mad(falls),
                            path.beforeKg(),
                            path.afterKg(),
                            path.largestFallKg(),
                            evenShare(path, beside));
                });
    }

    /** What it lost more than the others, kg. */
    public double beyondKg() {
        return fallKg - othersFallKg;
    }

    private static double evenShare(DayPath own, List<DayPath> others) {
        List<double[]> beside = others.stream().map(DayPath::lostByHourKg).toList();
        double[] beyond = own.lostByHourKg();
        for (int hour = 0; hour < beyond.length; hour++) {
            int at = hour;
            double[] heard = beside.stream()
                    .mapToDouble(path -> path[at])
                    .filter(lost -> !Double.isNaN(lost))
                    .toArray();
            beyond[hour] -= Robust.median(heard);
        }
        double[] hourly = IntStream.range(1, beyond.length)
                .mapToDouble(hour -> beyond[hour] - beyond[hour - 1])
                .filter(lost -> !Double.isNaN(lost))
                .toArray();
        return hourly.length < ENOUGH_HOURS
                ? Double.NaN
                : Arrays.stream(hourly).filter(lost -> lost > COUNTS_KG).count() / (double) hourly.length;
    }
}
