package org.duskline.collector.wire;

import java.time.Instant;

/**
 * What a node measured at one instant. A quantity that was not sent is {@link Double#NaN}, never 0.
 *
 * @param timeMillis when it was measured, Unix milliseconds, after clock repair
 * @param receivedMillis when its message reached us, Unix milliseconds
 * @param in bees counted inward since the node started
 * @param out bees counted outward since the node started
 * @param weightKg mean weight, kg (from {@code load} by the dated calibration where the node sends raw counts)
 * @param loadCount raw converter counts
 * @param weightSdKg standard deviation of the weight in the averaging window, kg
 * @param cellCelsius temperature at the load cell, in the shade
 * @param boxCelsius temperature inside the trap
 * @param humidityPercent relative humidity outside
 * @param batteryVolts battery voltage
 * @param boot how often the node has started; -1 when not sent
 * @param seq number of the pack since the node started; -1 when not sent
 * @param marks what was doubtful, as {@link Mark} bits
 */
public record Sample(
        long timeMillis,
        long receivedMillis,
        double in,
        double out,
        double weightKg,
        double loadCount,
        double weightSdKg,
        double cellCelsius,
        double boxCelsius,
        double humidityPercent,
        double batteryVolts,
        long boot,
        long seq,
        int marks) {

    public Instant time() {
        return Instant.ofEpochMilli(timeMillis);
    }

    public Instant received() {
        return Instant.ofEpochMilli(receivedMillis);
    }

    public boolean marked(Mark mark) {
        return (marks & mark.bit()) != 0;
    }
}
