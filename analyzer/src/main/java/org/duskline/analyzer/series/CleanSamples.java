package org.duskline.analyzer.series;

import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.wire.Sample;

/** A stretch of a series as samples: absurd values left out, counters running on over restarts and dips. */
public final class CleanSamples {
    private CleanSamples() {}

    /**
     * The samples from an index on, as far as they lie before a time.
     *
     * @param from the first index; one below 0 stands for 0
     * @param beforeMillis Unix milliseconds
     */
    public static List<Sample> of(TrapSeries series, int from, long beforeMillis) {
        List<Sample> samples = new ArrayList<>();
        for (int i = Math.max(0, from); i < series.size() && series.timeMillis(i) < beforeMillis; i++) {
            samples.add(at(series, i));
        }
        return samples;
    }

    private static Sample at(TrapSeries series, int i) {
        boolean countedIn = !Double.isNaN(series.value(Quantity.IN, i));
        boolean countedOut = !Double.isNaN(series.value(Quantity.OUT, i));
        return new Sample(
                series.timeMillis(i),
                series.timeMillis(i),
                countedIn ? series.totalIn(i) : Double.NaN,
                countedOut ? series.totalOut(i) : Double.NaN,
                series.value(Quantity.WEIGHT, i),
                Double.NaN,
                series.value(Quantity.WEIGHT_SD, i),
                series.value(Quantity.CELL, i),
                series.value(Quantity.BOX, i),
                series.value(Quantity.HUMIDITY, i),
                series.value(Quantity.BATTERY, i),
                -1,
                -1,
                0);
    }
}
