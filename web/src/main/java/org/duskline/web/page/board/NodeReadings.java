package org.duskline.web.page.board;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.duskline.collector.wire.Sample;

/** Reads through a node's samples in time order and tells what it measures and how it fares. */
final class NodeReadings implements Consumer<Sample> {
    private final List<Instant> times = new ArrayList<>();
    private final Set<String> quantities = new LinkedHashSet<>();
    private double batteryVolts = Double.NaN;
    private long boot = -1;
    private long starts;

    @Override
    public void accept(Sample sample) {
        times.add(sample.time());
        measures("bees in and out", sample.in());
        measures("weight", sample.weightKg());
        measures("raw load", sample.loadCount());
        measures("box", sample.boxCelsius());
        measures("shade", sample.cellCelsius());
        measures("humidity", sample.humidityPercent());
        measures("battery", sample.batteryVolts());
        if (!Double.isNaN(sample.batteryVolts())) {
            batteryVolts = sample.batteryVolts();
        }
        if (sample.boot() >= 0) {
            starts += boot >= 0 && sample.boot() > boot ? sample.boot() - boot : 0;
            boot = sample.boot();
        }
    }

    private void measures(String quantity, double value) {
        if (!Double.isNaN(value)) {
            quantities.add(quantity);
        }
    }

    NodeDetail.Readings summary(Instant newest) {
        return new NodeDetail.Readings(
                newest, NodePace.usualDistance(times), List.copyOf(quantities), batteryVolts, boot, starts);
    }
}
