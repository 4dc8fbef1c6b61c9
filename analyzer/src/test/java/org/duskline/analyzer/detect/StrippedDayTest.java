package org.duskline.analyzer.detect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.duskline.analyzer.finding.Rival;
import org.junit.jupiter.api.Test;

/**
 * What a scale shows of robbers over a day. That they carry off a few hundred grams of old honey and comb bit by bit from morning
 * until dusk, and do not come back once it is gone, is common practice; the sizes are this project's own.
 */
class StrippedDayTest {
    private static final long DAY = 24 * 3_600_000L;
    private static final long NOON = 20_000 * DAY + DAY / 2;
    private static final OptionalDouble NO_COUNTER = OptionalDouble.empty();

    /** Twelve days on which the box and the others lost next to nothing. */
    private static final List<DayLoss> LEVEL_DAYS = IntStream.rangeClosed(1, 12)
            .mapToObj(ago -> loss(NOON - (13 - ago) * DAY, ago % 2 == 0 ? 0.01 : -0.01, 0, 5, 0.01, 0.4))
            .toList();

    private static DayLoss loss(
            long noon, double fallKg, double othersKg, double beforeKg, double largestKg, double evenShare) {
        return new DayLoss(
                noon, noon - DAY / 8, fallKg, othersKg, 0.03, beforeKg, beforeKg - fallKg, largestKg, evenShare);
    }

    private static double logOdds(DayLoss day, List<DayLoss> before) {
        return StrippedDay.weigh(day, before, NO_COUNTER, false).logOdds();
    }

    private static DayLoss stripped() {
        return loss(NOON, 0.3, 0.02, 5, 0.03, 0.8);
    }

    @Test
    void three_hundred_grams_that_went_bit_by_bit_through_the_day_were_robbers() {
        StrippedDay robbers = StrippedDay.weigh(stripped(), LEVEL_DAYS, NO_COUNTER, false);
        assertThat(robbers.logOdds()).isGreaterThan(2);
        assertThat(robbers.rivals().values().stream().mapToDouble(p -> p).sum()).isEqualTo(1, within(1e-9));
        assertThat(robbers.rivals()).containsKeys(Rival.ROBBERS, Rival.RAIN, Rival.TARE_SHIFT, Rival.HANDS);
        assertThat(robbers.evidence())
                .anySatisfy(piece -> assertThat(piece.said())
                        .isEqualTo("lost 0.28 kg more than the other boxes from night to night"));
        assertThat(robbers.said()).isEqualTo("0.30 kg lost from night to night; the other boxes lost 0.02 kg");
    }

    @Test
    void that_the_other_boxes_gained_is_said_in_words() {
        assertThat(StrippedDay.weigh(loss(NOON, 0.3, -0.05, 5, 0.03, 0.8), LEVEL_DAYS, NO_COUNTER, false)
                        .said())
                .isEqualTo("0.30 kg lost from night to night; the other boxes gained 0.05 kg");
    }

    @Test
    void what_all_boxes_lost_alike_dried() {
        assertThat(logOdds(loss(NOON, 0.3, 0.28, 5, 0.03, 0.5), LEVEL_DAYS)).isLessThan(-2);
    }

    @Test
    void what_went_all_at_once_was_a_zero_point_or_hands() {
        assertThat(logOdds(loss(NOON, 0.3, 0.02, 5, 0.29, 0.4), LEVEL_DAYS)).isNegative();
    }

    @Test
    void a_box_that_alone_was_wetted_the_day_before_dries() {
        List<DayLoss> wetted = new ArrayList<>(LEVEL_DAYS);
        wetted.add(loss(NOON - DAY / 2, -0.3, 0.02, 4.7, 0.03, 0.2));
        DayLoss drying = loss(NOON + DAY / 2, 0.3, 0.02, 5, 0.03, 0.6);
        assertThat(logOdds(drying, wetted))
                .isLessThan(logOdds(stripped(), LEVEL_DAYS) - 1.5)
                .isLessThan(Math.log(1.5));
        assertThat(StrippedDay.weigh(drying, wetted, NO_COUNTER, false).evidence())
                .anySatisfy(piece -> assertThat(piece.said())
                        .isEqualTo("the day before it gained 0.32 kg more than the others, which dries"));
    }

    @Test
    void a_box_that_differs_as_much_on_most_days_says_little() {
        List<DayLoss> restless = IntStream.rangeClosed(1, 12)
                .mapToObj(ago -> loss(NOON - (13 - ago) * DAY, ago % 2 == 0 ? 0.3 : -0.3, 0, 5, 0.03, 0.5))
                .toList();
        assertThat(logOdds(stripped(), restless)).isLessThan(logOdds(stripped(), LEVEL_DAYS) - 2);
    }

    @Test
    void a_still_entrance_speaks_against_robbers_and_a_busy_one_for_them() {
        double weighed = logOdds(stripped(), LEVEL_DAYS);
        assertThat(StrippedDay.weigh(stripped(), LEVEL_DAYS, OptionalDouble.of(0.1), false)
                        .logOdds())
                .isLessThan(weighed - 2);
        assertThat(StrippedDay.weigh(stripped(), LEVEL_DAYS, OptionalDouble.of(12), false)
                        .logOdds())
                .isGreaterThan(weighed + 1);
    }

    @Test
    void on_a_day_on_which_the_keeper_was_at_the_trap_the_loss_may_be_his() {
        assertThat(StrippedDay.weigh(stripped(), LEVEL_DAYS, NO_COUNTER, true).logOdds())
                .isLessThan(logOdds(stripped(), LEVEL_DAYS) - 2);
    }
}
