package org.duskline.analyzer.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Brier 1950 and the partition of Murphy 1973, whose identity is the check. */
class ForecastScoreTest {
    @Test
    void single_forecasts_score_by_the_definition() {
        assertThat(score(1, true)).isEqualTo(0);
        assertThat(score(0.7, true)).isCloseTo(0.09, within(1e-12));
        assertThat(score(0.3, true)).isCloseTo(0.49, within(1e-12));
        assertThat(score(1, false)).isEqualTo(1);
    }

    @Test
    void reliability_resolution_and_uncertainty_make_up_the_score() {
        Random random = new Random(3);
        double[] chances = new double[5000];
        boolean[] outcomes = new boolean[chances.length];
        for (int i = 0; i < chances.length; i++) {
            chances[i] = 0.05 + random.nextInt(10) / 10.0;
            outcomes[i] = random.nextDouble() < chances[i] * 0.8;
        }
        ForecastScore score = ForecastScore.of(chances, outcomes, 10);
        assertThat(score.reliability() - score.resolution() + score.uncertainty())
                .isCloseTo(score.brier(), within(1e-12));
        assertThat(score.bins()).hasSize(10);
        assertThat(score.skill()).isBetween(0.1, 0.5);
    }

    @Test
    void a_calibrated_forecast_lies_on_the_diagonal_and_the_base_rate_has_no_skill() {
        double[] chances = {0.25, 0.25, 0.25, 0.25};
        ForecastScore score = ForecastScore.of(chances, new boolean[] {true, false, false, false}, 5);
        assertThat(score.bins()).hasSize(1);
        assertThat(score.bins().get(0).meanChance()).isCloseTo(0.25, within(1e-12));
        assertThat(score.bins().get(0).happened()).isEqualTo(new Proportion(1, 4));
        assertThat(score.reliability()).isCloseTo(0, within(1e-12));
        assertThat(score.skill()).isCloseTo(0, within(1e-12));
    }

    @Test
    void a_chance_beyond_one_is_refused() {
        assertThatThrownBy(() -> score(30, true)).hasMessageContaining("between 0 and 1");
    }

    private static double score(double chance, boolean happened) {
        return ForecastScore.of(new double[] {chance}, new boolean[] {happened}, 10)
                .brier();
    }
}
