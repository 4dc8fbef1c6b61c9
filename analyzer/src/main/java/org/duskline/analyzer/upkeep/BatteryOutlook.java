package org.duskline.analyzer.upkeep;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.duskline.analyzer.stats.Interval;
import org.duskline.analyzer.stats.Robust;
import org.duskline.analyzer.stats.TheilSen;
import org.duskline.collector.wire.Sample;

/**
 * How long a battery will last, from a robust line through its daily medians (Theil-Sen), so that cold nights, sunny
 * hours and odd readings do not count. A straight line is a fair guess until the last days, when voltage falls faster.
 *
 * @param at the time of the last reading
 * @param volts the line's value there
 * @param voltsPerDay the line's slope
 * @param daysLeft days until empty; empty where the battery does not go down
 * @param daysInterval the same from the slope's 90 % interval; its upper end may be infinite
 */
public record BatteryOutlook(
        Instant at, double volts, double voltsPerDay, Optional<Double> daysLeft, Optional<Interval> daysInterval) {
    private static final int DAYS = 21;
    private static final int FEWEST_DAYS = 5;
    private static final double CONFIDENCE = 0.9;
    private static final double MILLIS_A_DAY = Duration.ofDays(1).toMillis();

    /**
     * Fits the last three weeks.
     *
     * @param samples of the node in time order
     * @param emptyVolts where the node stops
     * @return empty with readings on fewer than five days
     */
    public static Optional<BatteryOutlook> fit(List<Sample> samples, double emptyVolts) {
        List<Sample> known =
                samples.stream().filter(s -> !Double.isNaN(s.batteryVolts())).toList();
        if (known.isEmpty()) {
            return Optional.empty();
        }
        Instant at = known.get(known.size() - 1).time();
        Map<Long, List<Sample>> byAge = known.stream()
                .filter(sample -> daysBefore(sample, at) < DAYS)
                .collect(Collectors.groupingBy(
                        sample -> (long) daysBefore(sample, at), TreeMap::new, Collectors.toList()));
        if (byAge.size() < FEWEST_DAYS) {
            return Optional.empty();
        }
        double[] day = byAge.values().stream()
                .mapToDouble(each -> -Robust.median(each.stream()
                        .mapToDouble(sample -> daysBefore(sample, at))
                        .toArray()))
                .toArray();
        double[] volts = byAge.values().stream()
                .mapToDouble(each -> Robust.median(
                        each.stream().mapToDouble(Sample::batteryVolts).toArray()))
                .toArray();
        TheilSen line = TheilSen.fit(day, volts, CONFIDENCE);
        double spare = Math.max(0, line.at(0) - emptyVolts);
        Optional<Double> left = line.slope() < 0 ? Optional.of(spare / -line.slope()) : Optional.empty();
        return Optional.of(new BatteryOutlook(
                at, line.at(0), line.slope(), left, left.map(days -> interval(spare, line.slopes()))));
    }

    private static Interval interval(double spare, Interval slopes) {
        double longest = slopes.high() < 0 ? spare / -slopes.high() : Double.POSITIVE_INFINITY;
        return new Interval(spare / -slopes.low(), longest);
    }

    private static double daysBefore(Sample sample, Instant at) {
        return (at.toEpochMilli() - sample.timeMillis()) / MILLIS_A_DAY;
    }
}
