package org.duskline.analyzer.detect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScatterTest {
    private static final long MINUTE = 60_000L;

    /**
     * Yeast cells in 400 squares of a counting chamber, from none to twelve a square: Student, On the error of counting
     * with a haemacytometer, Biometrika 5 (1907), the sample with 4.68 a square; recalled from memory. He finds that
     * Poisson's law describes them.
     */
    private static final int[] SQUARES_WITH_SO_MANY_CELLS = {0, 20, 43, 53, 86, 70, 54, 37, 18, 10, 5, 2, 2};

    private static TrapSeries series(List<int[]> inAndOut) {
        TrapSeries series = new TrapSeries(Long.MAX_VALUE / 4);
        double in = 0;
        double out = 0;
        series.add(sample(0, 0, 0));
        for (int i = 0; i < inAndOut.size(); i++) {
            in += inAndOut.get(i)[0];
            out += inAndOut.get(i)[1];
            series.add(sample((i + 1) * MINUTE, in, out));
        }
        return series;
    }

    private static Sample sample(long millis, double in, double out) {
        double none = Double.NaN;
        return new Sample(millis, millis, in, out, none, none, none, none, none, none, none, -1, -1, 0);
    }

    private static double unexplained(TrapSeries series) {
        return Scatter.unexplained(series, 0, series.size() - 1);
    }

    @Test
    void cells_that_fell_by_chance_leave_nothing_unexplained() {
        List<int[]> cells = new ArrayList<>();
        for (int many = 0; many < SQUARES_WITH_SO_MANY_CELLS.length; many++) {
            cells.addAll(Collections.nCopies(SQUARES_WITH_SO_MANY_CELLS[many], new int[] {many, 0}));
        }
        Collections.shuffle(cells, new Random(1907));
        assertThat(cells).hasSize(400);
        assertThat(unexplained(series(cells))).isNegative();
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 3.5, 5, 8, 12})
    void a_rate_that_swings_as_an_exponential_number_shows_its_squared_coefficient_of_variation_of_one(double mean) {
        Random random = new Random(Double.hashCode(mean));
        List<int[]> swings = new ArrayList<>();
        for (int i = 0; i < 3000; i++) {
            swings.add(new int[] {poisson(random, mean * -Math.log(1 - random.nextDouble())), 0});
        }
        assertThat(unexplained(series(swings))).isCloseTo(1, within(0.35));
    }

    @ParameterizedTest
    @ValueSource(doubles = {2, 3.5, 5, 8, 12})
    void bees_that_turn_either_way_by_chance_are_as_lopsided_as_chance(double mean) {
        Random random = new Random(Double.hashCode(mean));
        List<int[]> bees = new ArrayList<>();
        for (int i = 0; i < 3000; i++) {
            bees.add(new int[] {poisson(random, mean / 2), poisson(random, mean / 2)});
        }
        TrapSeries series = series(bees);
        assertThat(Scatter.lopsided(series, 0, series.size() - 1)).isCloseTo(1, within(0.15));
    }

    @Test
    void a_handful_of_samples_says_nothing() {
        assertThat(unexplained(series(List.of(new int[] {9, 0}, new int[] {0, 0}, new int[] {30, 0}))))
                .isZero();
    }

    private static int poisson(Random random, double mean) {
        double left = Math.exp(-mean);
        int count = 0;
        for (double product = random.nextDouble(); product > left; product *= random.nextDouble()) {
            count++;
        }
        return count;
    }
}
