package org.duskline.analyzer.detect;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ForecastTest {
    @Test
    void more_scouts_and_more_scouted_days_make_a_swarm_likelier() {
        assertThat(Forecast.of(8, 0).within24Hours())
                .isGreaterThan(Forecast.of(1.5, 0).within24Hours());
        assertThat(Forecast.of(3, 3).within24Hours())
                .isGreaterThan(Forecast.of(3, 0).within24Hours());
    }

    @Test
    void two_days_bring_at_least_what_one_brings() {
        for (double perMinute : new double[] {0.5, 1.5, 5, 20, 60}) {
            for (int days = 0; days <= 4; days++) {
                Forecast forecast = Forecast.of(perMinute, days);
                assertThat(forecast.within48Hours()).isGreaterThanOrEqualTo(forecast.within24Hours());
                assertThat(forecast.within24Hours()).isBetween(0.03, 0.75);
            }
        }
    }

    @Test
    void it_is_said_in_whole_percent() {
        assertThat(new Forecast(0.243, 0.338).said()).isEqualTo("a swarm within a day: 24 %, within two: 34 %");
    }
}
