package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.visit.VisitKind;
import org.junit.jupiter.api.Test;

/**
 * What the days after say at a scale without a counter: foragers make a dip of 0.05 to 0.3 kg that is repaid by dusk (common
 * practice), and an empty box makes none.
 */
class ForagersOnTheScaleTest {
    private static final Duration TEN_MINUTES = Duration.ofMinutes(10);
    private static final String END = "31T12:00";

    private static TrapDays stepAt(String time) {
        return new TrapDays(74, TEN_MINUTES).until(time).jump(1.5);
    }

    /** A sixth of a kilogram leaves from six to nine and comes home from four to seven. */
    private static TrapDays foraging(TrapDays days, int... ofMay) {
        for (int day : ofMay) {
            dip(days, day, 0.165);
        }
        return days;
    }

    private static TrapDays dip(TrapDays days, int ofMay, double kg) {
        days.until(ofMay + "T06:00").losing(kg / 3);
        days.until(ofMay + "T09:00").losing(0);
        days.until(ofMay + "T16:00").losing(-kg / 3);
        return days.until(ofMay + "T19:00").losing(0);
    }

    private static WatchedScales hang(TrapDays days, Duration late) {
        List<TrapDays> others = IntStream.rangeClosed(1, 4)
                .mapToObj(i -> new TrapDays(90 + i, TEN_MINUTES).until(END))
                .toList();
        return WatchedScales.hang(days.until(END), others, late);
    }

    private static WatchedScales amongDryOnes(TrapDays days) {
        return hang(days, Duration.ZERO).hear();
    }

    @Test
    void a_swarm_that_came_between_two_samples_is_told_once_its_foragers_fly() {
        Finding late = theOnlyOne(amongDryOnes(foraging(stepAt("24T12:00"), 25, 26)));
        assertThat(late.onset()).isBetween("2031-05-24T11:40:00Z", "2031-05-24T12:10:00Z");
        assertThat(late.raised()).isAfter("2031-05-26T05:00:00Z");
        assertThat(late.summary()).startsWith("A swarm came unnoticed, +1.5");
        assertThat(late.evidence()).anySatisfy(each -> assertThat(each.said()).startsWith("Foragers are out"));
    }

    private static Finding theOnlyOne(WatchedScales scales) {
        assertThat(scales.moveIns(Stage.RAISED)).hasSize(1);
        return scales.moveIns(Stage.RAISED).get(0);
    }

    @Test
    void the_day_for_which_it_is_told_is_not_counted_twice() {
        WatchedScales scales = amongDryOnes(foraging(stepAt("24T12:00"), 25, 26, 27));
        Finding late = theOnlyOne(scales);
        assertThat(scales.moveIns(Stage.STRENGTHENED))
                .isNotEmpty()
                .allSatisfy(later ->
                        assertThat(later.changed()).isAfter(late.raised().plus(Duration.ofHours(20))));
    }

    @Test
    void it_is_told_as_well_where_the_other_scales_are_heard_of_six_hours_late() {
        assertThat(hang(foraging(stepAt("24T12:00"), 25, 26), Duration.ofHours(6))
                        .hear()
                        .moveIns(Stage.RAISED))
                .hasSize(1);
    }

    @Test
    void a_scale_that_jumps_again_on_the_next_day_has_no_foragers() {
        TrapDays upAndDown = stepAt("24T12:00")
                .until("25T08:00")
                .jump(-0.3)
                .until("26T17:00")
                .jump(0.3);
        assertThat(amongDryOnes(upAndDown).moveIns(Stage.RAISED)).isEmpty();
    }

    @Test
    void a_small_dip_on_one_day_alone_says_too_little() {
        assertThat(amongDryOnes(dip(stepAt("24T12:00"), 25, 0.09)).moveIns(Stage.RAISED))
                .isEmpty();
    }

    @Test
    void a_swarm_that_came_while_a_lone_scale_was_silent_is_told_once_its_foragers_fly() {
        TrapDays days = new TrapDays(78, TEN_MINUTES).until("24T12:00").swarm(1.6, Duration.ofMinutes(30));
        foraging(days, 25, 26, 27).silent("24T11:00", "24T14:00");
        Finding late = theOnlyOne(amongDryOnes(days));
        assertThat(late.onset()).isBetween("2031-05-24T13:50:00Z", "2031-05-24T14:20:00Z");
        assertThat(late.rivals()).containsOnlyKeys(Rival.SWARM, Rival.TARE_SHIFT, Rival.HANDS);
    }

    @Test
    void an_alarm_at_a_box_from_which_nobody_flies_on_fair_days_is_taken_back() {
        assertThat(amongDryOnes(alarm()).moveIns(Stage.ENDED))
                .singleElement()
                .satisfies(ended -> assertThat(ended.summary()).startsWith("No foragers"));
    }

    @Test
    void one_whose_foragers_fly_stands() {
        assertThat(amongDryOnes(foraging(alarm(), 22, 23, 24, 25, 26, 27, 28, 29, 30))
                        .moveIns(Stage.ENDED))
                .isEmpty();
    }

    @Test
    void bees_that_the_keeper_shut_in_need_not_fly() {
        WatchedScales scales = hang(alarm(), Duration.ZERO).visited(VisitKind.CLOSED, "21T19:30");
        assertThat(scales.hear().moveIns(Stage.ENDED)).isEmpty();
    }

    private static TrapDays alarm() {
        return new TrapDays(79, Duration.ofMinutes(5)).until("21T12:00").swarm(1.3, Duration.ofMinutes(20));
    }

    @Test
    void a_collection_that_is_written_down_later_takes_a_late_alarm_back() {
        WatchedScales scales = amongDryOnes(foraging(stepAt("24T12:00"), 25, 26));
        theOnlyOne(scales);
        scales.visited(VisitKind.COLLECTED, "24T20:00");
        assertThat(scales.moveIns(Stage.WITHDRAWN)).hasSize(1);
    }
}
