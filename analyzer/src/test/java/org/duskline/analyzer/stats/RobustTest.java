package org.duskline.analyzer.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Published data sets of analytical chemistry; expected values by R's MASS and robustbase. */
class RobustTest {
    private static final JsonNode CHECKS = CheckFile.json("04-robust.json");

    @ParameterizedTest
    @ValueSource(strings = {"chem", "abbey"})
    void published_sets_with_wild_values_have_their_robust_location_and_scale(String name) {
        JsonNode set = CHECKS.get(name);
        JsonNode computed = set.get("computed");
        double[] data = CheckFile.numbers(set.get("data"));
        assertThat(Robust.median(data)).isCloseTo(computed.get("median").asDouble(), within(1e-9));
        assertThat(Robust.mad(data)).isCloseTo(computed.get("mad").asDouble(), within(1e-6));
        // the reference stops once a round moves it by less than a millionth of the scale
        assertThat(Robust.huber(data)).isCloseTo(computed.get("huberM_mu").asDouble(), within(2e-6 * Robust.mad(data)));
        assertThat(pulls(data, Robust.huber(data))).isCloseTo(0, within(1e-9));
        assertThat(Robust.sn(data)).isCloseTo(computed.get("Sn").asDouble(), within(1e-6));
        assertThat(Robust.qn(data)).isCloseTo(computed.get("Qn").asDouble(), within(1e-6));
    }

    @Test
    void small_sets_have_their_deviation_even_if_it_is_zero() {
        for (JsonNode small : CHECKS.get("mad_small")) {
            assertThat(Robust.mad(CheckFile.numbers(small.get("data"))))
                    .isCloseTo(small.get("mad").asDouble(), within(1e-9));
        }
        assertThat(Robust.huber(5, 5, 5, 5, 9)).isEqualTo(5);
    }

    @Test
    void nothing_has_no_location_and_one_value_no_scale() {
        assertThat(Robust.median()).isNaN();
        assertThat(Robust.mad()).isNaN();
        assertThat(Robust.sn(1)).isNaN();
        assertThat(Robust.qn(1)).isNaN();
    }

    @Test
    void pair_scales_are_the_normal_deviation_on_average_for_few_and_many_values() {
        Random random = new Random(7);
        for (int size : new int[] {5, 8, 11, 20}) {
            double sn = 0;
            double qn = 0;
            int draws = 4000;
            for (int draw = 0; draw < draws; draw++) {
                double[] values =
                        random.doubles(size).map(x -> random.nextGaussian()).toArray();
                sn += Robust.sn(values) / draws;
                qn += Robust.qn(values) / draws;
            }
            assertThat(sn).as("Sn of %d", size).isCloseTo(1, within(0.03));
            assertThat(qn).as("Qn of %d", size).isCloseTo(1, within(0.03));
        }
    }

    @Test
    void the_line_of_sen_1968_is_met_with_its_interval() {
        JsonNode said = CHECKS.get("theil_sen");
        TheilSen line = TheilSen.fit(
                CheckFile.numbers(said.get("x")),
                CheckFile.numbers(said.get("y")),
                1 - said.get("alpha").asDouble());
        assertThat(line.slope()).isCloseTo(said.get("slope").asDouble(), within(1e-9));
        assertThat(line.intercept())
                .isCloseTo(
                        said.get("intercept_separate_median_y_minus_slope_median_x")
                                .asDouble(),
                        within(1e-9));
        assertThat(line.slopes().low()).isCloseTo(said.get("lower").asDouble(), within(0.005));
        assertThat(line.slopes().high()).isCloseTo(said.get("upper").asDouble(), within(0.005));
    }

    @Test
    void wild_years_do_not_bend_the_line() {
        JsonNode phones = CHECKS.get("theil_sen_phones");
        double[] x = CheckFile.numbers(phones.get("x"));
        double[] y = CheckFile.numbers(phones.get("y"));
        assertThat(TheilSen.fit(x, y, 0.95).slope())
                .isCloseTo(phones.get("slope").asDouble(), within(1e-6));
        JsonNode small = CHECKS.get("theil_sen_small").get("cases").get(0);
        TheilSen three = TheilSen.fit(new double[] {0, 1, 2}, CheckFile.numbers(small.get("y")), 0.95);
        assertThat(three.slope()).isCloseTo(small.get("slope").asDouble(), within(1e-9));
        assertThat(three.intercept()).isCloseTo(small.get("intercept_separate").asDouble(), within(1e-9));
    }

    @Test
    void a_line_through_one_place_is_refused() {
        assertThatThrownBy(() -> TheilSen.fit(new double[] {3, 3}, new double[] {1, 2}, 0.95))
                .hasMessageContaining("two different places");
    }

    @Test
    void certified_serial_correlations_are_met() {
        for (JsonNode set : CheckFile.json("04-nist-strd.json").get("sets")) {
            double[] data = set.has("data")
                    ? CheckFile.numbers(set.get("data"))
                    : alternating(set.get("name").asText());
            assertThat(SerialCorrelation.lagOne(data))
                    .as(set.get("name").asText())
                    .isCloseTo(set.get("lag1").asDouble(), within(1e-7));
        }
    }

    /** Huber's estimating equation: deviations, none pulling harder than 1.5 scales, cancel. */
    private static double pulls(double[] data, double location) {
        double reach = 1.5 * Robust.mad(data);
        return Arrays.stream(data)
                .map(x -> Math.max(-reach, Math.min(reach, x - location)))
                .sum();
    }

    private static double[] alternating(String name) {
        double base = switch (name) {
            case "NumAcc2" -> 1;
            case "NumAcc3" -> 1000000;
            case "NumAcc4" -> 10000000;
            default -> throw new IllegalArgumentException(name);
        };
        double[] data = new double[1001];
        Arrays.setAll(data, i -> i == 0 ? base + 0.2 : i % 2 == 1 ? base + 0.1 : base + 0.3);
        return data;
    }
}
