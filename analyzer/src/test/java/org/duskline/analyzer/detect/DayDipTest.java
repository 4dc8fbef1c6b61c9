package org.duskline.analyzer.detect;

import static org.assertj.core.api.Assertions.assertThat;

import org.duskline.analyzer.detect.DayDip.Usual;
import org.junit.jupiter.api.Test;

/**
 * Foragers' absence on the scale. That a tenth to a quarter of some 11,000 bees are out, 0.1 to 0.3 kg, and are back by dusk is
 * common practice; the dip itself is described by Meikle and others (2018, doi
 * 10.1371/journal.pone.0197589) and by Holst and Meikle (2018, Insects 9, 176).
 */
class DayDipTest {
    private static final double SWARM_KG = 1.4;
    private static final Usual LEVEL = new Usual(0, 0.02);

    private static double nats(DayDip dip) {
        return dip.evidence(SWARM_KG, LEVEL).logOdds();
    }

    @Test
    void a_tenth_of_the_bees_gone_by_day_and_back_by_night_speaks_for_a_colony() {
        assertThat(nats(new DayDip(0.15, 0.00, 0.02))).isGreaterThan(1.5);
        assertThat(new DayDip(0.15, 0.00, 0.02).evidence(SWARM_KG, LEVEL).said())
                .isEqualTo("Foragers are out: by day the box was 0.15 kg lighter than at night, sun and drying aside");
    }

    @Test
    void a_box_as_heavy_by_day_as_at_night_speaks_against_one_but_not_for_sure_since_bees_stay_at_home_on_some_days() {
        assertThat(nats(new DayDip(0.00, 0.00, 0.02))).isBetween(-1.6, -0.5);
    }

    @Test
    void what_sun_and_drying_take_from_all_boxes_alike_is_no_foragers() {
        assertThat(nats(new DayDip(0.15, 0.15, 0.02))).isNegative();
    }

    @Test
    void a_box_that_dipped_as_much_while_it_was_empty_has_no_foragers() {
        DayDip sunny = new DayDip(0.15, 0.00, 0.02);
        Usual inTheSun = Usual.of(0.15, 0.14, 0.16);
        assertThat(sunny.evidence(SWARM_KG, inTheSun).logOdds()).isNegative();
    }

    @Test
    void a_box_of_which_too_few_empty_days_are_known_says_less() {
        DayDip dip = new DayDip(0.15, 0.00, 0.02);
        assertThat(dip.evidence(SWARM_KG, Usual.of(0.01)).logOdds()).isBetween(0.0, nats(dip) - 0.5);
    }

    @Test
    void a_box_that_is_heavier_by_day_has_no_foragers() {
        DayDip wet = new DayDip(-0.2, 0.00, 0.02);
        assertThat(nats(wet)).isLessThan(0.01);
        assertThat(wet.evidence(SWARM_KG, LEVEL).said())
                .isEqualTo("No foragers: by day the box was 0.00 kg lighter than at night, sun and drying aside");
    }

    @Test
    void on_a_day_on_which_the_other_boxes_differ_widely_nothing_is_decided() {
        assertThat(nats(new DayDip(0.15, 0.00, 0.4))).isBetween(-0.3, 0.3);
    }

    @Test
    void a_handful_of_bees_takes_too_little_with_it_to_be_seen() {
        assertThat(new DayDip(0.02, 0.00, 0.02).evidence(0.2, LEVEL).logOdds()).isBetween(-0.3, 0.3);
    }
}
