package org.duskline.analyzer.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.stats.CheckFile.Row;
import org.junit.jupiter.api.Test;

/** Worked examples of the NIST/SEMATECH e-Handbook and of Montgomery and Runger. */
class ControlChartsTest {
    private static final double EXACT = 1e-9;
    private static final double PRINTED = 0.005 + EXACT;

    @Test
    void the_handbook_cusum_is_met_in_every_column_and_alarms_at_group_14() {
        JsonNode said = CheckFile.json("01-control-charts.json").get("nist_cusum");
        TabularCusum chart = TabularCusum.of(
                said.get("target").asDouble(),
                said.get("k").asDouble(),
                said.get("h").asDouble());
        TabularCusum.State state = chart.start();
        List<Integer> alarms = new ArrayList<>();
        for (Row row : CheckFile.table("01-nist-cusum-6.3.2.3.csv")) {
            state = chart.next(state, row.number("x"));
            assertThat(state.high()).isCloseTo(row.number("exact_S_hi"), within(EXACT));
            assertThat(state.low()).isCloseTo(row.number("exact_S_lo"), within(EXACT));
            assertThat(state.high()).isCloseTo(row.number("published_S_hi"), within(PRINTED));
            assertThat(state.low()).isCloseTo(row.number("published_S_lo"), within(PRINTED));
            assertThat(state.highAlarm()).isEqualTo(row.number("signal_hi") == 1);
            assertThat(state.lowAlarm()).isEqualTo(row.number("signal_lo") == 1);
            if (state.highAlarm()) {
                alarms.add((int) row.number("group"));
            }
        }
        assertThat(alarms.get(0)).isEqualTo(said.get("first_high_signal_group").asInt());
        assertThat(alarms).hasSize(said.get("high_signal_groups").size());
    }

    @Test
    void run_counters_tell_since_when_a_sum_has_grown() {
        JsonNode said = CheckFile.json("01-control-charts.json").get("montgomery_runger");
        TabularCusum chart = TabularCusum.of(
                said.get("target").asDouble(),
                said.get("K").asDouble(),
                said.get("H").asDouble());
        TabularCusum.State state = chart.start();
        for (Row row : CheckFile.table("01-montgomery-runger-cusum-16-8.csv")) {
            state = chart.next(state, row.number("x"));
            assertThat(state.high()).isCloseTo(row.number("exact_S_H"), within(EXACT));
            assertThat(state.low()).isCloseTo(row.number("exact_S_L"), within(EXACT));
            assertThat(state.highRun()).isEqualTo((int) row.number("exact_n_H"));
            assertThat(state.lowRun()).isEqualTo((int) row.number("exact_n_L"));
            assertThat(state.highAlarm() || state.lowAlarm()).isFalse();
        }
    }

    @Test
    void a_headstart_alarms_sooner_and_a_missing_value_changes_nothing() {
        TabularCusum plain = TabularCusum.of(0, 0.5, 4);
        TabularCusum ahead = new TabularCusum(0, 0.5, 4, 2);
        assertThat(valuesToAlarm(plain, 1.5)).isEqualTo(5);
        assertThat(valuesToAlarm(ahead, 1.5)).isEqualTo(3);
        TabularCusum.State before = ahead.next(ahead.start(), 1);
        assertThat(ahead.next(before, Double.NaN)).isEqualTo(before);
    }

    @Test
    void the_handbook_ewma_is_met_and_never_alarms() {
        JsonNode said = CheckFile.json("01-control-charts.json").get("nist_ewma");
        EwmaChart chart = new EwmaChart(
                said.get("ewma0").asDouble(),
                said.get("sigma").asDouble(),
                said.get("lambda").asDouble(),
                said.get("L").asDouble());
        EwmaChart.State state = chart.start();
        List<Row> rows = CheckFile.table("01-nist-ewma-6.3.2.4.csv");
        for (Row row : rows.subList(1, rows.size())) {
            state = chart.next(state, row.number("x"));
            assertThat(state.average()).isCloseTo(row.number("exact_ewma"), within(EXACT));
            assertThat(state.average()).isCloseTo(row.number("published_ewma"), within(PRINTED));
            assertThat(state.high()).isCloseTo(row.number("time_varying_ucl"), within(1e-6));
            assertThat(state.low()).isCloseTo(row.number("time_varying_lcl"), within(1e-6));
            assertThat(state.alarm()).isFalse();
        }
        assertThat(chart.settledLimits().high())
                .isCloseTo(said.get("ucl_unrounded").asDouble(), within(EXACT));
        assertThat(chart.settledLimits().low())
                .isCloseTo(said.get("lcl_unrounded").asDouble(), within(EXACT));
    }

    @Test
    void an_ewma_that_leaves_its_limits_alarms() {
        EwmaChart chart = new EwmaChart(50, 2, 0.3, 3);
        EwmaChart.State high = chart.next(chart.start(), 57);
        assertThat(high.alarm()).isTrue();
        assertThat(chart.next(chart.start(), 43).alarm()).isTrue();
        assertThat(chart.next(high, Double.NaN)).isEqualTo(high);
    }

    @Test
    void a_poisson_cusum_sums_counts_on_its_own_side_and_minds_its_alarm_rule() {
        PoissonCusum reaches = new PoissonCusum(PoissonCusum.Side.UPPER, 3, 10, 0, PoissonCusum.AlarmRule.REACHES);
        PoissonCusum exceeds = new PoissonCusum(PoissonCusum.Side.UPPER, 3, 10, 0, PoissonCusum.AlarmRule.EXCEEDS);
        double sum = reaches.next(reaches.next(reaches.start(), 1), 13);
        assertThat(sum).isEqualTo(10);
        assertThat(reaches.alarms(sum)).isTrue();
        assertThat(exceeds.alarms(sum)).isFalse();
        PoissonCusum falling = new PoissonCusum(PoissonCusum.Side.LOWER, 3, 10, 5, PoissonCusum.AlarmRule.REACHES);
        assertThat(falling.next(falling.start(), 1)).isEqualTo(7);
        assertThat(falling.next(7, Double.NaN)).isEqualTo(7);
    }

    @Test
    void the_reference_of_a_poisson_cusum_lies_between_the_two_means() {
        // (8 - 4) / ln 2, by hand from Lucas 1985
        assertThat(PoissonCusum.referenceBetween(4, 8)).isCloseTo(5.7707801636, within(1e-9));
        assertThatThrownBy(() -> PoissonCusum.referenceBetween(4, 4)).hasMessageContaining("Two different means");
    }

    private static int valuesToAlarm(TabularCusum chart, double value) {
        TabularCusum.State state = chart.start();
        int values = 0;
        while (!state.highAlarm()) {
            state = chart.next(state, value);
            values++;
        }
        return values;
    }
}
