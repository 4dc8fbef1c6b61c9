package org.duskline.analyzer.curve;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class CurveTableTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final Instant NINE = Instant.parse("2026-05-12T07:00:00Z");

    @Test
    void an_hour_adds_up_its_bees_and_keeps_its_busiest_minute_and_its_first_and_last_weight() {
        CurveTable table = new CurveTable(NINE, NINE.plus(Duration.ofHours(2)), VIENNA);
        table.accept(point(NINE.plus(Duration.ofMinutes(10)), 30, 10, 9.0, 21));
        table.accept(point(NINE.plus(Duration.ofMinutes(20)), 50, 20, 10.4, 19));
        table.accept(point(NINE.plus(Duration.ofMinutes(70)), 1, 2, 10.5, 24));

        CurveRow first = table.rows().get(0);
        assertThat(first.beesIn()).isCloseTo(800, Offset.offset(1e-9));
        assertThat(first.beesOut()).isCloseTo(300, Offset.offset(1e-9));
        assertThat(first.busiestPerMinute()).isEqualTo(50);
        assertThat(first.firstWeightKg()).isEqualTo(9.0);
        assertThat(first.lastWeightKg()).isEqualTo(10.4);
        assertThat(first.lowBoxCelsius()).isEqualTo(19);
        assertThat(first.highBoxCelsius()).isEqualTo(21);
        assertThat(table.rows()).hasSize(2);
    }

    @Test
    void an_hour_without_a_sample_is_a_row_of_silence_and_not_of_zeros() {
        CurveTable table = new CurveTable(NINE, NINE.plus(Duration.ofHours(3)), VIENNA);
        table.accept(point(NINE, 1, 1, 9, 20));
        table.accept(point(NINE.plus(Duration.ofHours(2)), 1, 1, 9, 20));

        CurveRow silent = table.rows().get(1);
        assertThat(silent.samples()).isZero();
        assertThat(silent.beesIn()).isNaN();
        assertThat(silent.lastWeightKg()).isNaN();
    }

    @Test
    void a_day_on_which_the_clocks_go_forward_has_twenty_three_hours() {
        Instant midnight = Instant.parse("2026-03-28T23:00:00Z");
        CurveTable table = new CurveTable(midnight, Instant.parse("2026-03-29T22:00:00Z"), VIENNA);
        assertThat(table.rows()).hasSize(23);
        assertThat(table.byTheHour()).isTrue();
    }

    @Test
    void beyond_three_days_the_rows_are_days_from_midnight_to_midnight_at_the_site() {
        CurveTable table = new CurveTable(NINE, NINE.plus(Duration.ofDays(7)), VIENNA);
        assertThat(table.byTheHour()).isFalse();
        assertThat(table.rows()).hasSize(8);
        assertThat(table.rows().get(1).from()).isEqualTo(Instant.parse("2026-05-12T22:00:00Z"));
    }

    private static CurvePoint point(Instant time, double in, double out, double weight, double box) {
        return new CurvePoint(time.toEpochMilli(), 10, in, out, weight, Double.NaN, box, Double.NaN);
    }
}
