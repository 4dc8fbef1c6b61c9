package org.duskline.analyzer.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.Test;

/** The non-paralyzable counter of Knoll, chapter 4, and a worked example with a counter tube. */
class DeadTimeTest {
    private static final JsonNode CHECKS = CheckFile.json("08-dead-time.json");

    @Test
    void a_grid_of_rates_is_lost_and_recovered() {
        for (JsonNode said : CHECKS.get("grid")) {
            DeadTime counter = new DeadTime(said.get("tau_s").asDouble());
            double rate = said.get("true_rate").asDouble();
            double observed = said.get("observed_nonparalyzable").asDouble();
            assertThat(counter.observedRate(rate)).isCloseTo(observed, withinPercentage(1e-7));
            assertThat(counter.trueRate(observed)).isCloseTo(rate, withinPercentage(1e-7));
        }
    }

    @Test
    void thirty_thousand_a_minute_were_thirty_three_thousand() {
        JsonNode tube = CHECKS.get("published").get(1);
        DeadTime counter = new DeadTime(tube.get("tau_s").asDouble());
        assertThat(counter.trueCount(tube.get("observed_per_min").asDouble(), 60))
                .isCloseTo(tube.get("true_per_min").asDouble(), within(1e-6));
    }

    @Test
    void simulated_losses_agree_with_the_formula() {
        for (JsonNode said : CHECKS.get("simulation")) {
            double load = said.get("n_tau").asDouble();
            assertThat(new DeadTime(1).observedRate(load))
                    .isCloseTo(said.get("nonparalyzable_sim").asDouble(), withinPercentage(1));
        }
    }

    @Test
    void a_saturated_counter_knows_no_upper_end() {
        DeadTime lane = new DeadTime(0.25);
        assertThat(lane.saturation()).isEqualTo(4);
        assertThat(lane.trueRate(4)).isInfinite();
        assertThat(lane.trueRate(5)).isInfinite();
        assertThat(new DeadTime(0).trueRate(5)).isEqualTo(5);
    }
}
