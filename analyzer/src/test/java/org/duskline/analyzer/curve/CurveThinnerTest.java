package org.duskline.analyzer.curve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CurveThinnerTest {
    private static final Instant MORNING = Instant.parse("2026-05-12T04:00:00Z");

    @Test
    void a_rush_of_ten_minutes_is_still_seen_in_the_view_of_a_season() {
        Instant end = MORNING.plus(Duration.ofDays(100));
        Instant rush = MORNING.plus(Duration.ofDays(41)).plus(Duration.ofHours(9));
        CurveThinner thinner = new CurveThinner(MORNING, end, 800);
        for (Instant time = MORNING; time.isBefore(end); time = time.plus(Duration.ofMinutes(2))) {
            boolean rushing = !time.isBefore(rush) && time.isBefore(rush.plus(Duration.ofMinutes(10)));
            thinner.accept(traffic(time, rushing ? 240 : 2, 1));
        }
        Curve season = thinner.curve();

        assertThat(season.size()).isEqualTo(800);
        assertThat(season.points()).isEqualTo(72_000);
        assertThat(season.highest(Quantity.IN_PER_MINUTE)).isEqualTo(240);
        assertThat(rowsAbove(season, 100))
                .hasSize(1)
                .first()
                .satisfies(row -> assertThat(Duration.between(rush, Instant.ofEpochMilli(season.timeMillis(row)))
                                .abs())
                        .isLessThan(Duration.ofHours(3)));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void every_column_keeps_its_lowest_highest_and_mean_as_a_plain_search_finds_them(long seed) {
        Random random = new Random(seed);
        int columns = 1 + random.nextInt(60);
        long length = Duration.ofHours(1 + random.nextInt(200)).toMillis();
        List<CurvePoint> points = randomPoints(random, length);
        CurveThinner thinner =
                new CurveThinner(MORNING, Instant.ofEpochMilli(MORNING.toEpochMilli() + length), columns);
        points.forEach(thinner);
        Curve curve = thinner.curve();

        int row = 0;
        for (int column = 0; column < columns; column++) {
            double start = MORNING.toEpochMilli() + column * (length / (double) columns);
            double end = MORNING.toEpochMilli() + (column + 1) * (length / (double) columns);
            List<CurvePoint> inside = points.stream()
                    .filter(point -> point.timeMillis() >= start && point.timeMillis() < end)
                    .toList();
            if (inside.isEmpty()) {
                continue;
            }
            while (Double.isNaN(curve.high(Quantity.WEIGHT_KG, row))) {
                row++;
            }
            var weights = inside.stream().mapToDouble(CurvePoint::weightKg).summaryStatistics();
            assertThat(curve.low(Quantity.WEIGHT_KG, row)).isEqualTo(weights.getMin());
            assertThat(curve.high(Quantity.WEIGHT_KG, row)).isEqualTo(weights.getMax());
            assertThat(curve.mean(Quantity.WEIGHT_KG, row)).isCloseTo(weights.getAverage(), within1e9());
            row++;
        }
        assertThat(row).isEqualTo(curve.size());
    }

    @Test
    void rows_stand_in_time_order_and_points_that_need_no_thinning_keep_their_own_time() {
        CurveThinner thinner = new CurveThinner(MORNING, MORNING.plus(Duration.ofHours(4)), 1000);
        List<Instant> heard = new ArrayList<>();
        for (int sample = 0; sample < 48; sample++) {
            Instant time = MORNING.plus(Duration.ofMinutes(5L * sample)).plusSeconds(17);
            heard.add(time);
            thinner.accept(traffic(time, sample, 1));
        }
        Curve curve = thinner.curve();

        List<Instant> drawn = new ArrayList<>();
        for (int row = 0; row < curve.size(); row++) {
            drawn.add(Instant.ofEpochMilli(curve.timeMillis(row)));
        }
        assertThat(drawn).isEqualTo(heard).isSorted();
    }

    @Test
    void a_silence_is_drawn_as_a_gap_and_the_usual_pace_is_not() {
        CurveThinner thinner = new CurveThinner(MORNING, MORNING.plus(Duration.ofHours(12)), 700);
        for (int minute = 0; minute < 720; minute += 10) {
            if (minute < 300 || minute >= 420) {
                thinner.accept(traffic(MORNING.plus(Duration.ofMinutes(minute)), 5, 5));
            }
        }
        Curve curve = thinner.curve();

        List<Integer> gaps = gaps(curve);
        assertThat(gaps).hasSize(1);
        assertThat(Instant.ofEpochMilli(curve.timeMillis(gaps.get(0))))
                .isBetween(MORNING.plus(Duration.ofMinutes(290)), MORNING.plus(Duration.ofMinutes(420)));
    }

    @Test
    void a_trap_without_a_scale_has_no_weight_instead_of_a_weight_of_zero() {
        CurveThinner thinner = new CurveThinner(MORNING, MORNING.plus(Duration.ofHours(1)), 10);
        thinner.accept(traffic(MORNING.plusSeconds(60), 3, 2));
        Curve curve = thinner.curve();

        assertThat(curve.has(Quantity.WEIGHT_KG)).isFalse();
        assertThat(curve.highest(Quantity.WEIGHT_KG)).isNaN();
        assertThat(curve.has(Quantity.IN_PER_MINUTE)).isTrue();
    }

    @Test
    void points_outside_the_view_are_left_out() {
        CurveThinner thinner = new CurveThinner(MORNING, MORNING.plus(Duration.ofHours(1)), 10);
        thinner.accept(traffic(MORNING.minusSeconds(1), 900, 0));
        thinner.accept(traffic(MORNING.plus(Duration.ofHours(1)), 900, 0));
        assertThat(thinner.curve().size()).isZero();
    }

    @Test
    void a_view_that_ends_before_it_begins_is_refused_with_both_times() {
        assertThatThrownBy(() -> new CurveThinner(MORNING, MORNING, 10))
                .hasMessage("The view ends (2026-05-12T04:00:00Z) before it begins (2026-05-12T04:00:00Z).");
    }

    private static org.assertj.core.data.Offset<Double> within1e9() {
        return org.assertj.core.data.Offset.offset(1e-9);
    }

    private static List<CurvePoint> randomPoints(Random random, long length) {
        List<CurvePoint> points = new ArrayList<>();
        long time = 0;
        while (true) {
            time += 1 + (long) (random.nextDouble() < 0.02 ? random.nextDouble() * 3e7 : random.nextDouble() * 6e5);
            if (time >= length) {
                return points;
            }
            points.add(new CurvePoint(
                    MORNING.toEpochMilli() + time, 2, 1, 1, random.nextGaussian(), Double.NaN, Double.NaN, Double.NaN));
        }
    }

    private static CurvePoint traffic(Instant time, double in, double out) {
        return new CurvePoint(time.toEpochMilli(), 2, in, out, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    private static List<Integer> rowsAbove(Curve curve, double perMinute) {
        List<Integer> rows = new ArrayList<>();
        for (int row = 0; row < curve.size(); row++) {
            if (curve.high(Quantity.IN_PER_MINUTE, row) > perMinute) {
                rows.add(row);
            }
        }
        return rows;
    }

    private static List<Integer> gaps(Curve curve) {
        List<Integer> rows = new ArrayList<>();
        for (int row = 0; row < curve.size(); row++) {
            if (Double.isNaN(curve.high(Quantity.IN_PER_MINUTE, row))) {
                rows.add(row);
            }
        }
        return rows;
    }
}
