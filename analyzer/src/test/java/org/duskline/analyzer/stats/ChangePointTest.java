package org.duskline.analyzer.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Random;
import org.duskline.analyzer.stats.CheckFile.Row;
import org.junit.jupiter.api.Test;

/** The flow of the Nile at Aswan, whose level fell after 1898; expected values by R's strucchange. */
class ChangePointTest {
    private static final JsonNode SAID = CheckFile.json("03-nile.json");
    private static final double[] NILE = CheckFile.table("03-nile.csv").stream()
            .mapToDouble(row -> row.number("flow"))
            .toArray();

    @Test
    void the_nile_falls_after_1898() {
        SingleBreak found = SingleBreak.of(NILE, 15);
        JsonNode split = SAID.get("least_squares_single_split");
        assertThat(found.length()).isEqualTo(split.get("index").asInt());
        assertThat(1870 + found.length()).isEqualTo(split.get("year").asInt());
        assertThat(found.residual()).isCloseTo(split.get("RSS").asDouble(), within(1e-4));
        assertThat(found.whole()).isCloseTo(SAID.get("computed_RSS").get(0).asDouble(), within(1e-4));
        assertThat(found.before()).isCloseTo(SAID.get("mean_before_1871_1898").asDouble(), within(1e-9));
        assertThat(found.after()).isCloseTo(SAID.get("mean_after_1899_1970").asDouble(), within(1e-9));
        assertThat(found.fStatistic()).isCloseTo(SAID.get("computed_supF").asDouble(), within(1e-6));
        assertThat(found.step()).isNegative();
    }

    @Test
    void the_ranks_of_the_nile_tell_the_same_year() {
        Pettitt found = Pettitt.of(NILE);
        JsonNode said = SAID.get("pettitt");
        assertThat(found.length()).isEqualTo(said.get("index").asInt());
        assertThat(found.statistic()).isEqualTo(said.get("K").asLong());
        assertThat(found.pValue()).isCloseTo(said.get("p_approx_2exp").asDouble(), within(1e-12));
    }

    @Test
    void the_cusum_of_the_nile_is_farthest_out_at_the_break() {
        double farthest = 0;
        String year = "";
        for (Row row : CheckFile.table("03-nile.csv")) {
            if (Math.abs(row.number("cusum")) > farthest) {
                farthest = Math.abs(row.number("cusum"));
                year = row.text("year");
            }
        }
        assertThat(1870 + SingleBreak.of(NILE, 1).length()).isEqualTo(Integer.parseInt(year));
    }

    @Test
    void the_break_is_the_one_that_trying_all_finds() {
        Random random = new Random(11);
        for (int trial = 0; trial < 200; trial++) {
            double[] values = random.doubles(12, 0, 10).toArray();
            SingleBreak found = SingleBreak.of(values, 2);
            double least = Double.POSITIVE_INFINITY;
            for (int length = 2; length <= 10; length++) {
                least = Math.min(least, squares(values, 0, length) + squares(values, length, 12));
            }
            assertThat(found.residual()).isCloseTo(least, within(1e-9));
        }
    }

    @Test
    void a_series_too_short_for_two_levels_is_refused() {
        assertThatThrownBy(() -> SingleBreak.of(new double[] {1, 2, 3}, 2))
                .hasMessageContaining("cannot be looked for");
    }

    private static double squares(double[] values, int from, int until) {
        double mean = 0;
        for (int i = from; i < until; i++) {
            mean += values[i] / (until - from);
        }
        double sum = 0;
        for (int i = from; i < until; i++) {
            sum += (values[i] - mean) * (values[i] - mean);
        }
        return sum;
    }
}
