package org.duskline.analyzer.detect;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The line as its own control: rain reaches all boxes of a neighbourhood, a swarm reaches one. */
class OtherScalesTest {
    private static final double SOAKING = 0.03;

    @Test
    void where_no_others_hang_there_is_nothing_to_wait_for() {
        assertThat(new OtherScales(1, 1, 0).stayedDry(10, SOAKING)).isZero();
    }

    @Test
    void others_that_will_be_heard_of_later_are_waited_for() {
        assertThat(new OtherScales(4, 0, 0).stayedDry(10, SOAKING)).isLessThan(-1);
    }

    @Test
    void one_of_many_that_gained_may_have_had_a_bird_or_a_swarm_of_its_own() {
        assertThat(new OtherScales(3, 3, 1).soakedShare()).isEqualTo(0.1);
        assertThat(new OtherScales(12, 12, 1).soakedShare()).isLessThan(0.1);
        assertThat(new OtherScales(4, 4, 2).soakedShare()).isEqualTo(0.5);
    }

    @Test
    void two_dry_boxes_weigh_less_than_six() {
        assertThat(new OtherScales(2, 2, 0).stayedDry(25, SOAKING)).isNegative();
        assertThat(new OtherScales(6, 6, 0).stayedDry(25, SOAKING)).isEqualTo(1.5);
    }

    @Test
    void what_comes_faster_than_a_shower_soaks_in_needs_fewer_dry_boxes() {
        assertThat(new OtherScales(2, 2, 0).stayedDry(25, 0.12)).isPositive();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 5, 12})
    void the_longer_they_stay_dry_and_the_more_they_are_the_surer_it_was_no_rain(int heard) {
        for (double minutes = 0; minutes < 90; minutes += 5) {
            double dry = new OtherScales(20, heard, 0).stayedDry(minutes, SOAKING);
            assertThat(new OtherScales(20, heard, 0).stayedDry(minutes + 5, SOAKING))
                    .isGreaterThanOrEqualTo(dry);
            assertThat(new OtherScales(20, heard + 1, 0).stayedDry(minutes, SOAKING))
                    .isGreaterThanOrEqualTo(dry);
        }
    }
}
