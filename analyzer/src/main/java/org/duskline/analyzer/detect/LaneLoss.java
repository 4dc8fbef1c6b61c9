package org.duskline.analyzer.detect;

import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.stats.DeadTime;

/**
 * Bees that passed while a lane was blind after the one before, put back by the non-paralyzable dead-time formula
 * {@code N = M / (1 - M tau / L)} over L lanes that are used alike (Knoll, Radiation Detection and Measurement, chapter
 * 4), sample by sample. In and out share the lanes, so their sum is what blinds. A counter that ran as fast as it can
 * says no more than {@link #MOST_TIMES} times what it counted.
 */
final class LaneLoss {
    private static final double MOST_TIMES = 5;

    private LaneLoss() {}

    /**
     * Net bees inward between two moments, losses put back.
     *
     * @param blindSeconds dead time of a lane over the number of lanes, seconds; NaN where it is not known
     * @return NaN where the dead time is not known
     */
    static double netIn(TrapSeries series, long fromMillis, int to, double blindSeconds) {
        if (Double.isNaN(blindSeconds)) {
            return Double.NaN;
        }
        DeadTime lanes = new DeadTime(blindSeconds);
        double net = 0;
        for (int i = Math.max(1, series.firstAfter(fromMillis)); i <= to; i++) {
            double in = series.totalIn(i) - series.totalIn(i - 1);
            double out = series.totalOut(i) - series.totalOut(i - 1);
            double seconds = (series.timeMillis(i) - series.timeMillis(i - 1)) / 1000.0;
            net += (in - out) * times(lanes, in + out, seconds);
        }
        return net;
    }

    private static double times(DeadTime lanes, double counted, double seconds) {
        return counted <= 0 || seconds <= 0 ? 1 : Math.min(MOST_TIMES, lanes.trueCount(counted, seconds) / counted);
    }
}
