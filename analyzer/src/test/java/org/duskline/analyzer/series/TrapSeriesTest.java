package org.duskline.analyzer.series;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrapSeriesTest {
    private static final long MINUTE = 60_000L;

    private final TrapSeries series = new TrapSeries(9 * 24 * 60 * MINUTE);

    private static Sample counted(int minute, double in, long boot) {
        return new Sample(
                minute * MINUTE,
                minute * MINUTE,
                in,
                0,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                boot,
                -1,
                0);
    }

    private double totalAfter(long boot, double... readings) {
        for (int i = 0; i < readings.length; i++) {
            series.add(counted(i, readings[i], boot));
        }
        return series.totalIn(series.size() - 1) - series.totalIn(0);
    }

    @Test
    void bees_add_up_over_readings() {
        assertThat(totalAfter(-1, 100, 110, 110, 150)).isEqualTo(50);
    }

    @Test
    void a_node_that_starts_anew_counts_from_zero() {
        series.add(counted(0, 500, 3));
        series.add(counted(1, 520, 3));
        series.add(counted(2, 7, 4));
        series.add(counted(3, 9, 4));
        assertThat(series.totalIn(3) - series.totalIn(0)).isEqualTo(29);
    }

    @Test
    void without_a_boot_number_two_lower_readings_tell_a_new_start() {
        assertThat(totalAfter(-1, 500, 520, 3, 8, 12)).isEqualTo(32);
    }

    @Test
    void a_dip_that_returns_to_the_old_run_counts_nothing_twice() {
        assertThat(totalAfter(-1, 3737, 0, 3746)).isEqualTo(9);
    }

    @Test
    void a_longer_dip_counts_nothing_twice_either() {
        assertThat(totalAfter(-1, 37_370, 0, 0, 37_380)).isEqualTo(10);
    }

    @Test
    void a_single_wild_reading_upward_is_no_rush() {
        assertThat(totalAfter(-1, 100, 65_535, 104, 110)).isEqualTo(10);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void late_readings_find_their_place(long seed) {
        List<Sample> samples = new ArrayList<>();
        Random random = new Random(seed);
        double in = 0;
        for (int minute = 0; minute < 300; minute++) {
            in += random.nextInt(9);
            samples.add(counted(minute, in, -1));
        }
        double last = in - samples.get(0).in();
        Collections.shuffle(samples.subList(1, 300), random);
        samples.forEach(series::add);
        for (int i = 1; i < series.size(); i++) {
            assertThat(series.timeMillis(i)).isGreaterThan(series.timeMillis(i - 1));
        }
        assertThat(series.totalIn(299) - series.totalIn(0)).isEqualTo(last);
    }

    @Test
    void what_is_older_than_the_kept_days_is_left_to_the_store() {
        series.add(counted(20 * 24 * 60, 5, -1));
        assertThat(series.add(counted(0, 1, -1))).isEqualTo(Long.MAX_VALUE);
    }
}
