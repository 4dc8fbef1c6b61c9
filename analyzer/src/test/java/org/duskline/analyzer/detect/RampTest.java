package org.duskline.analyzer.detect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.DoubleStream;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;

/** What a gain on the scale is measured from. That a keeper lifts a box for minutes and sets it down again is common practice. */
class RampTest {
    private static final long TEN_MINUTES = 600_000L;

    private static Ramp after(double... weightsKg) {
        TrapSeries series = new TrapSeries(100 * TEN_MINUTES);
        double[] quiet = DoubleStream.generate(() -> 8).limit(12).toArray();
        double[] all = DoubleStream.concat(DoubleStream.of(quiet), DoubleStream.of(weightsKg))
                .toArray();
        for (int i = 0; i < all.length; i++) {
            series.add(weighed(TEN_MINUTES * (i + 1), all[i]));
        }
        return Ramp.upTo(series, series.size() - 1);
    }

    @Test
    void a_box_that_was_lifted_for_two_samples_of_ten_minutes_has_gained_nothing() {
        assertThat(after(6.0, 6.3, 7.1, 8.0, 8.0).gainKg()).isCloseTo(0, within(0.1));
    }

    @Test
    void a_swarm_has() {
        assertThat(after(8.1, 8.6, 9.2, 9.4, 9.4).gainKg()).isCloseTo(1.4, within(0.1));
    }

    @Test
    void one_that_comes_to_a_drying_box_is_measured_from_where_it_had_dried_to() {
        assertThat(after(7.95, 7.9, 7.85, 7.8, 8.5, 9.0, 9.2, 9.2).gainKg()).isCloseTo(1.4, within(0.1));
    }

    private static Sample weighed(long time, double kg) {
        return new Sample(
                time,
                time,
                Double.NaN,
                Double.NaN,
                kg,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                -1,
                -1,
                0);
    }
}
