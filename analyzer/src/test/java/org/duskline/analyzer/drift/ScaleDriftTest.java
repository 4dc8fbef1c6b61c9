package org.duskline.analyzer.drift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Invented nodes whose coefficient is known because it was put in. */
class ScaleDriftTest {
    private static final long START = 1_935_000_000_000L;
    private static final long TEN_MINUTES = 600_000L;

    private static List<Sample> days(int days, double kgPerCelsius, double swarmKg, double noiseKg) {
        Random random = new Random(11);
        List<Sample> samples = new ArrayList<>();
        for (int i = 0; i < days * 144; i++) {
            double hour = i / 6.0;
            double celsius = 16 + 7 * Math.sin((hour - 9) / 24 * 2 * Math.PI) + 2 * Math.sin(hour / 31);
            double wood = 0.06 * Math.sin(hour / 40);
            double swarm = hour > days * 12.0 ? swarmKg : 0;
            double kg = 8 + kgPerCelsius * (celsius - 20) + wood + swarm + noiseKg * random.nextGaussian();
            samples.add(sample(START + i * TEN_MINUTES, kg, celsius));
        }
        return samples;
    }

    private static Sample sample(long millis, double kg, double celsius) {
        double nan = Double.NaN;
        return new Sample(millis, millis, nan, nan, kg, nan, nan, celsius, nan, nan, nan, -1, -1, 0);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.004, 0.0007, 0.002, 0.005})
    void the_coefficient_that_was_put_in_lies_within_the_interval_that_is_said(double put) {
        ScaleDrift drift = ScaleDrift.of(days(14, put, 0, 0.003)).orElseThrow();

        assertThat(put).isBetween(drift.interval().low(), drift.interval().high());
        assertThat(drift.kgPerCelsius()).isCloseTo(put, within(0.0005));
    }

    @Test
    void a_swarm_in_between_does_not_bend_it() {
        ScaleDrift drift = ScaleDrift.of(days(14, 0.003, 1.6, 0.003)).orElseThrow();

        assertThat(drift.kgPerCelsius()).isCloseTo(0.003, within(0.0004));
    }

    @Test
    void correcting_takes_the_days_swing_out_and_leaves_the_level() {
        List<Sample> samples = days(14, 0.004, 0, 0.001);
        ScaleDrift drift = ScaleDrift.of(samples).orElseThrow();

        assertThat(spread(samples, drift)).isLessThan(0.5 * spread(samples, null));
        assertThat(drift.corrected(8, drift.referenceCelsius())).isEqualTo(8);
        assertThat(drift.corrected(8, Double.NaN)).isEqualTo(8);
    }

    private static double spread(List<Sample> samples, ScaleDrift drift) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Sample sample : samples.subList(0, 144)) {
            double kg = drift == null ? sample.weightKg() : drift.corrected(sample.weightKg(), sample.cellCelsius());
            low = Math.min(low, kg);
            high = Math.max(high, kg);
        }
        return high - low;
    }

    @Test
    void two_days_are_too_few_to_say_anything() {
        assertThat(ScaleDrift.of(days(1, 0.003, 0, 0.003))).isEmpty();
    }

    @Test
    void a_scale_that_does_not_move_with_temperature_is_left_as_it_is() {
        ScaleDrift drift = ScaleDrift.of(days(14, 0, 0, 0.004)).orElseThrow();

        assertThat(drift.interval().low()).isLessThan(0);
        assertThat(drift.interval().high()).isGreaterThan(0);
        assertThat(drift.corrected(7.5, 35)).isEqualTo(7.5);
    }
}
