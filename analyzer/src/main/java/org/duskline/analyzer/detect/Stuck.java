package org.duskline.analyzer.detect;

import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/** Sensors that say the same for too long to be alive. */
public final class Stuck {
    private static final int SAME_IN_A_ROW = 10;

    private Stuck() {}

    /** Whether the scale has said exactly the same so often that it measures nothing. */
    public static boolean weight(TrapSeries series, int at) {
        double last = series.value(Quantity.WEIGHT, at);
        int same = 0;
        for (int i = at - 1; i >= 0 && same < SAME_IN_A_ROW; i--) {
            double before = series.value(Quantity.WEIGHT, i);
            if (Double.isNaN(before)) {
                continue;
            }
            if (before != last) {
                return false;
            }
            same++;
        }
        return same == SAME_IN_A_ROW;
    }
}
