package org.duskline.analyzer.detect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;

/** Counts as a counter that is blind for a while after each bee gives them: m = n / (1 + n tau) (Knoll, chapter 4). */
class LaneLossTest {
    private static final double BLIND_SECONDS = 0.089 / 4;
    private static final int SECONDS = 60;

    private static TrapSeries rush(double inPerSecond, double outPerSecond, int minutes) {
        double passed = inPerSecond + outPerSecond;
        double seen = 1 / (1 + passed * BLIND_SECONDS);
        TrapSeries series = new TrapSeries(86_400_000L);
        for (int i = 0; i <= minutes; i++) {
            series.add(sample(
                    i * SECONDS * 1000L,
                    Math.rint(i * SECONDS * inPerSecond * seen),
                    Math.rint(i * SECONDS * outPerSecond * seen)));
        }
        return series;
    }

    private static Sample sample(long millis, double in, double out) {
        double nan = Double.NaN;
        return new Sample(millis, millis, in, out, nan, nan, nan, nan, nan, nan, nan, -1, -1, 0);
    }

    @Test
    void a_rush_of_ten_thousand_through_four_lanes_is_counted_short_and_put_back() {
        TrapSeries series = rush(11, 2, 20);
        double counted = series.totalIn(20) - series.totalOut(20);

        assertThat(counted).isLessThan(0.8 * 9 * 20 * SECONDS);
        assertThat(LaneLoss.netIn(series, 0, 20, BLIND_SECONDS)).isCloseTo(9.0 * 20 * SECONDS, within(30.0));
    }

    @Test
    void a_few_scouts_lose_next_to_nothing() {
        TrapSeries series = rush(0.5, 0.1, 10);

        assertThat(LaneLoss.netIn(series, 0, 10, BLIND_SECONDS)).isCloseTo(0.4 * 10 * SECONDS, within(5.0));
    }

    @Test
    void without_a_known_counter_nothing_is_put_back() {
        assertThat(LaneLoss.netIn(rush(5, 1, 5), 0, 5, Double.NaN)).isNaN();
    }

    @Test
    void a_counter_at_its_end_is_not_blown_up_without_bound() {
        TrapSeries series = new TrapSeries(86_400_000L);
        series.add(sample(0, 0, 0));
        series.add(sample(60_000, 2700, 0));

        assertThat(LaneLoss.netIn(series, 0, 1, BLIND_SECONDS)).isEqualTo(5 * 2700.0);
    }
}
