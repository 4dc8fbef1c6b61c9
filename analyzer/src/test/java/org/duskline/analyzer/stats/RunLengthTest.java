package org.duskline.analyzer.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Random;
import org.duskline.analyzer.stats.CheckFile.Row;
import org.duskline.analyzer.stats.PoissonCusum.AlarmRule;
import org.duskline.analyzer.stats.PoissonCusum.Side;
import org.junit.jupiter.api.Test;

/** Average run lengths of the literature, and as computed by R's spc package. */
class RunLengthTest {
    private static final double RELATIVE_PERCENT = 0.01;

    @Test
    void the_run_lengths_of_normal_cusums_in_the_literature_are_met() {
        int met = 0;
        for (Row row : CheckFile.table("02-arl-cusum-normal-published.csv")) {
            if (!row.text("scheme").equals("cusum")) {
                continue;
            }
            NormalCusumRunLength length = new NormalCusumRunLength(row.number("k"), row.number("h"));
            double found = row.text("sided").equals("one")
                    ? length.upper(row.number("shift"), row.number("headstart"))
                    : length.twoSided(row.number("shift"), row.number("headstart"));
            assertThat(found).as("%s", row).isCloseTo(row.number("computed"), withinPercentage(RELATIVE_PERCENT));
            met++;
        }
        assertThat(met).isEqualTo(60);
    }

    @Test
    void the_run_lengths_of_a_grid_of_normal_cusums_are_met() {
        for (Row row : CheckFile.table("02-arl-cusum-normal-computed.csv")) {
            NormalCusumRunLength length = new NormalCusumRunLength(row.number("k"), row.number("h"));
            double shift = row.number("shift");
            assertThat(length.upper(shift, 0))
                    .as("%s", row)
                    .isCloseTo(row.number("arl_one_sided_upper"), withinPercentage(RELATIVE_PERCENT));
            assertThat(length.twoSided(shift))
                    .as("%s", row)
                    .isCloseTo(row.number("arl_two_sided"), withinPercentage(RELATIVE_PERCENT));
        }
    }

    @Test
    void the_decision_interval_for_a_wanted_run_length_is_found() {
        for (Row row : CheckFile.table("02-cusum-h-for-arl-computed.csv")) {
            double wanted = row.number("in_control_arl");
            assertThat(NormalCusumRunLength.decisionFor(row.number("k"), wanted))
                    .as("%s", row)
                    .isCloseTo(row.number("h_one_sided"), within(1e-4));
            assertThat(NormalCusumRunLength.decisionFor(row.number("k"), 2 * wanted))
                    .as("two-sided %s", row)
                    .isCloseTo(row.number("h_two_sided"), within(1e-4));
        }
    }

    @Test
    void the_run_lengths_of_ewma_charts_in_the_literature_are_met() {
        for (Row row : CheckFile.table("02-arl-ewma-normal.csv")) {
            EwmaRunLength length = new EwmaRunLength(row.number("lambda"), row.number("L"));
            assertThat(length.twoSided(row.number("shift")))
                    .as("%s", row)
                    .isCloseTo(row.number("computed"), withinPercentage(RELATIVE_PERCENT));
        }
    }

    @Test
    void siegmunds_approximation_is_met_and_lies_near_the_exact_length_in_control() {
        for (Row row : CheckFile.table("02-arl-siegmund.csv")) {
            double k = row.number("k");
            double h = row.number("h");
            double shift = row.number("shift");
            assertThat(SiegmundRunLength.upper(k, h, shift))
                    .isCloseTo(row.number("siegmund_upper"), withinPercentage(1e-6));
            assertThat(SiegmundRunLength.upper(k, h, -shift))
                    .isCloseTo(row.number("siegmund_lower"), withinPercentage(1e-6));
            assertThat(SiegmundRunLength.twoSided(k, h, shift))
                    .isCloseTo(row.number("siegmund_two_sided"), withinPercentage(1e-6));
            if (shift == 0) {
                assertThat(SiegmundRunLength.upper(k, h, 0))
                        .isCloseTo(row.number("exact_upper_spc"), withinPercentage(6));
            }
        }
        // Montgomery, 7th ed., p 423: k 0.5, h 5 gives 938.2 on one side and 469.1 on two
        assertThat(SiegmundRunLength.upper(0.5, 5, 0)).isCloseTo(938.2, within(0.05));
        assertThat(SiegmundRunLength.twoSided(0.5, 5, 0)).isCloseTo(469.1, within(0.05));
    }

    @Test
    void the_poisson_run_lengths_of_lucas_are_met_on_both_sides_with_and_without_headstart() {
        for (Row row : CheckFile.table("02-arl-poisson-cusum-lucas.csv")) {
            Side side = row.text("sided").equals("upper") ? Side.UPPER : Side.LOWER;
            PoissonCusum chart = new PoissonCusum(
                    side, row.number("k"), row.number("h"), row.number("headstart_quarters") / 4, AlarmRule.REACHES);
            double found = PoissonCusumRunLength.of(chart, row.number("mean"));
            assertThat(found).as("%s", row).isCloseTo(row.number("computed"), withinPercentage(1e-4));
            assertThat(found).as("%s", row).isCloseTo(row.number("published"), within(0.5));
        }
    }

    @Test
    void poisson_run_lengths_are_met_for_both_alarm_rules() {
        for (Row row : CheckFile.table("02-arl-poisson-cusum-computed.csv")) {
            double k = row.number("k");
            double h = row.number("h");
            double mean = row.number("mean");
            assertThat(PoissonCusumRunLength.of(new PoissonCusum(Side.UPPER, k, h, 0, AlarmRule.REACHES), mean))
                    .as("%s", row)
                    .isCloseTo(row.number("arl_alarm_S_ge_h"), withinPercentage(1e-4));
            assertThat(PoissonCusumRunLength.of(new PoissonCusum(Side.UPPER, k, h, 0, AlarmRule.EXCEEDS), mean))
                    .as("%s", row)
                    .isCloseTo(row.number("arl_alarm_S_gt_h"), withinPercentage(1e-4));
        }
    }

    @Test
    void a_simulated_chart_alarms_as_often_as_computed() {
        TabularCusum chart = TabularCusum.of(0, 0.5, 3);
        Random random = new Random(20260512);
        int runs = 4000;
        long values = 0;
        for (int run = 0; run < runs; run++) {
            TabularCusum.State state = chart.start();
            while (!state.highAlarm() && !state.lowAlarm()) {
                state = chart.next(state, random.nextGaussian() + 0.5);
                values++;
            }
        }
        double expected = new NormalCusumRunLength(0.5, 3).twoSided(0.5);
        assertThat((double) values / runs).isCloseTo(expected, withinPercentage(5));
    }
}
