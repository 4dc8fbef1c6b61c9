package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** How odds read. */
class WhyTextTest {
    @Test
    void robbers_of_the_day_before_who_are_told_from_three_to_two_on_read_so() {
        assertThat(WhyText.needed(Math.exp(Math.log(1.5)))).isEqualTo("told from 1.5 to 1 on");
    }

    @Test
    void whole_odds_read_as_whole_numbers() {
        assertThat(WhyText.needed(Math.exp(Math.log(4)))).isEqualTo("told from 4 to 1 on");
        assertThat(WhyText.needed(1000)).isEqualTo("told from 1,000 to 1 on");
    }
}
