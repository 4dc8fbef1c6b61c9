package org.duskline.collector.store;

import java.util.List;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.wire.Sample;

/** Weighs a node's raw counts by the calibration that held when they were measured. */
final class Scale {
    private final List<Calibration> inOrder;
    private final long[] from;

    Scale(List<Calibration> inOrder) {
        this.inOrder = inOrder;
        this.from = inOrder.stream().mapToLong(c -> Times.millis(c.from())).toArray();
    }

    /** The sample with its weight, if it has raw counts and a calibration holds for its time; otherwise as it is. */
    Sample weighed(Sample sample) {
        if (from.length == 0 || Double.isNaN(sample.loadCount()) || !Double.isNaN(sample.weightKg())) {
            return sample;
        }
        int holding = from.length - 1;
        while (holding >= 0 && from[holding] > sample.timeMillis()) {
            holding--;
        }
        return holding < 0
                ? sample
                : SampleMerge.weighing(sample, inOrder.get(holding).weightKg(sample.loadCount()));
    }
}
