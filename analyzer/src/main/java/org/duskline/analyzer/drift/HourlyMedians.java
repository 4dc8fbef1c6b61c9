package org.duskline.analyzer.drift;

import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.stats.Robust;
import org.duskline.collector.wire.Mark;
import org.duskline.collector.wire.Sample;

/** Weight and cell temperature by the hour, medians, in time order; hours without both are left out. */
record HourlyMedians(List<Hour> hours) {
    private static final long HOUR_MILLIS = 3_600_000L;

    /**
     * @param hour hours since the epoch
     * @param kg median weight
     * @param celsius median temperature of the load cell
     */
    record Hour(long hour, double kg, double celsius) {}

    static HourlyMedians of(List<Sample> inTimeOrder) {
        List<Hour> hours = new ArrayList<>();
        List<Sample> current = new ArrayList<>();
        long hour = Long.MIN_VALUE;
        for (Sample sample : inTimeOrder) {
            if (!usable(sample)) {
                continue;
            }
            long its = Math.floorDiv(sample.timeMillis(), HOUR_MILLIS);
            if (its != hour && !current.isEmpty()) {
                hours.add(median(hour, current));
                current.clear();
            }
            hour = its;
            current.add(sample);
        }
        if (!current.isEmpty()) {
            hours.add(median(hour, current));
        }
        return new HourlyMedians(List.copyOf(hours));
    }

    private static boolean usable(Sample sample) {
        return !Double.isNaN(sample.weightKg())
                && !Double.isNaN(sample.cellCelsius())
                && !sample.marked(Mark.ABSURD_WEIGHT)
                && !sample.marked(Mark.ABSURD_CELL);
    }

    private static Hour median(long hour, List<Sample> samples) {
        return new Hour(
                hour,
                Robust.median(samples.stream().mapToDouble(Sample::weightKg).toArray()),
                Robust.median(samples.stream().mapToDouble(Sample::cellCelsius).toArray()));
    }
}
