package org.duskline.analyzer.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.duskline.analyzer.stats.CheckFile.Row;
import org.junit.jupiter.api.Test;

/** Newcombe 1998 table I for proportions, R's poisson.test for rates. */
class ExactIntervalsTest {
    @Test
    void the_intervals_of_newcombe_are_met() {
        for (Row row : CheckFile.table("06-proportion-intervals-95.csv")) {
            Proportion proportion = new Proportion((int) row.number("x"), (int) row.number("n"));
            Interval exact = proportion.clopperPearson(0.95);
            Interval wilson = proportion.wilson(0.95);
            assertThat(exact.low()).as("%s", row).isCloseTo(row.number("cp_lo"), within(1e-8));
            assertThat(exact.high()).as("%s", row).isCloseTo(row.number("cp_hi"), within(1e-8));
            assertThat(wilson.low()).as("%s", row).isCloseTo(row.number("wilson_lo"), within(1e-8));
            assertThat(wilson.high()).as("%s", row).isCloseTo(row.number("wilson_hi"), within(1e-8));
            if (row.has("pub_cp_lo")) {
                assertThat(exact.low()).isCloseTo(row.number("pub_cp_lo"), within(5e-5));
                assertThat(exact.high()).isCloseTo(row.number("pub_cp_hi"), within(5e-5));
                assertThat(wilson.low()).isCloseTo(row.number("pub_wilson_lo"), within(5e-5));
                assertThat(wilson.high()).isCloseTo(row.number("pub_wilson_hi"), within(5e-5));
            }
        }
    }

    @Test
    void the_exact_interval_ends_where_a_tail_holds_its_share() {
        for (int trials = 1; trials <= 12; trials++) {
            for (int successes = 0; successes <= trials; successes++) {
                Interval found = new Proportion(successes, trials).clopperPearson(0.9);
                if (successes > 0) {
                    assertThat(BinomialDistribution.of(trials, found.low()).survivalProbability(successes - 1))
                            .isCloseTo(0.05, within(1e-9));
                }
                if (successes < trials) {
                    assertThat(BinomialDistribution.of(trials, found.high()).cumulativeProbability(successes))
                            .isCloseTo(0.05, within(1e-9));
                }
            }
        }
    }

    @Test
    void exact_rates_are_met() {
        for (JsonNode said : CheckFile.json("06-poisson.json").get("one_sample")) {
            PoissonRate rate =
                    new PoissonRate(said.get("x").asInt(), said.get("t").asDouble());
            assertThat(rate.estimate()).isCloseTo(said.get("rate").asDouble(), within(1e-6));
            assertThat(rate.exact(0.95).low()).isCloseTo(said.get("ci95").get(0).asDouble(), within(1e-6));
            assertThat(rate.exact(0.95).high())
                    .isCloseTo(said.get("ci95").get(1).asDouble(), within(1e-6));
        }
    }

    @Test
    void exact_rate_ratios_are_met() {
        for (JsonNode said : CheckFile.json("06-poisson.json").get("rate_ratio")) {
            PoissonRate first =
                    new PoissonRate(said.get("x1").asInt(), said.get("t1").asDouble());
            PoissonRate second =
                    new PoissonRate(said.get("x2").asInt(), said.get("t2").asDouble());
            Interval interval = first.ratioInterval(second, 0.95);
            assertThat(first.ratioTo(second)).isCloseTo(said.get("rate_ratio").asDouble(), within(1e-6));
            assertThat(interval.low()).isCloseTo(said.get("ci95").get(0).asDouble(), within(1e-6));
            assertThat(interval.high()).isCloseTo(said.get("ci95").get(1).asDouble(), within(1e-5));
            assertThat(first.equalityPValue(second))
                    .isCloseTo(said.get("p_two_sided").asDouble(), within(1e-6));
        }
    }

    @Test
    void no_event_anywhere_says_nothing_about_the_ratio() {
        PoissonRate none = new PoissonRate(0, 10);
        assertThat(none.ratioInterval(none, 0.95)).isEqualTo(new Interval(0, Double.POSITIVE_INFINITY));
        assertThat(none.equalityPValue(none)).isEqualTo(1);
    }

    @Test
    void nonsense_is_refused_in_words() {
        assertThatThrownBy(() -> new Proportion(3, 2)).hasMessage("3 of 2 is no proportion.");
        assertThatThrownBy(() -> new PoissonRate(3, 0)).hasMessageContaining("no rate");
        assertThatThrownBy(() -> new Proportion(1, 2).wilson(95)).hasMessageContaining("95 % is written 0.95");
        assertThatThrownBy(() -> new Interval(2, 1)).hasMessageContaining("from 2.0 down to 1.0");
    }
}
