package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.IntStream;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.junit.jupiter.api.Test;

/**
 * Robbers at a trap with a scale alone are told on the next morning. That they carry off a few hundred grams bit by bit, from
 * morning until dusk, is common practice.
 */
class RobbersOnTheScaleTest {
    private static final Duration FIVE_MINUTES = Duration.ofMinutes(5);
    private static final String END = "28T12:00";

    private static TrapDays box(long seed) {
        return new TrapDays(seed, FIVE_MINUTES);
    }

    /** A third of a kilogram between nine and five. */
    private static TrapDays robbed(TrapDays days, int... ofMay) {
        for (int day : ofMay) {
            days.until(day + "T09:00").losing(0.042);
            days.until(day + "T17:00").losing(0);
        }
        return days;
    }

    private static WatchedScales among(int others, TrapDays days, Duration late) {
        return among(others, days.until(END), late, END);
    }

    private static WatchedScales among(int others, TrapDays days, Duration late, String end) {
        List<TrapDays> line =
                IntStream.range(0, others).mapToObj(i -> box(30 + i).until(end)).toList();
        return WatchedScales.hang(days, line, late);
    }

    private static List<Finding> told(WatchedScales scales) {
        return scales.hear().told(Kind.ROBBING, Stage.RAISED);
    }

    @Test
    void robbers_at_a_lone_scale_are_told_on_the_next_morning() {
        WatchedScales scales = among(4, robbed(box(21), 24), Duration.ZERO);
        assertThat(told(scales)).singleElement().satisfies(robbers -> {
            assertThat(robbers.onset()).isBetween(at("24T08:00"), at("24T11:30"));
            assertThat(robbers.raised()).isBetween(at("25T05:00"), at("25T08:30"));
            assertThat(robbers.summary())
                    .matches(
                            "Probably robbers: 0[.]3[0-9] kg lost from night to night; the other boxes (lost|gained) 0[.]0[0-9] kg");
            assertThat(robbers.probability()).isBetween(0.6, 0.99);
        });
        assertThat(scales.told(Kind.ROBBING, Stage.ENDED)).hasSize(1);
    }

    private static Instant at(String time) {
        return Instant.parse("2031-05-" + time + ":00Z");
    }

    @Test
    void robbers_who_come_back_on_the_next_day_are_told_once() {
        assertThat(told(among(4, robbed(box(21), 24, 25), Duration.ZERO))).hasSize(1);
    }

    @Test
    void robbers_of_three_days_are_told_once_and_are_gone_after_the_third() {
        WatchedScales scales = among(4, robbed(box(21), 24, 25, 26), Duration.ZERO);
        assertThat(told(scales)).hasSize(1);
        assertThat(scales.told(Kind.ROBBING, Stage.ENDED))
                .singleElement()
                .satisfies(ended -> assertThat(ended.changed()).isAfter(at("28T06:00")));
    }

    @Test
    void scouts_who_come_the_day_after_are_told_all_the_same() {
        TrapDays days = box(21).until("24T09:00").losing(0.042).crossings(2.6).until("24T17:00");
        days.losing(0).crossings(0).until("25T10:00");
        for (int hour = 10; hour < 17; hour++) {
            days.crossings(0.2 * (hour - 9) * (hour - 9)).until("25T" + (hour + 1) + ":00");
        }
        List<TrapDays> line = IntStream.range(0, 4)
                .mapToObj(i -> box(30 + i).until("25T17:00"))
                .toList();
        WatchedScales scales =
                WatchedScales.hang(Fitted.BOTH, days, line, Duration.ZERO).hear();
        assertThat(scales.told(Kind.ROBBING, Stage.RAISED)).hasSize(1);
        assertThat(scales.told(Kind.SCOUTING, Stage.RAISED)).hasSize(1);
    }

    @Test
    void a_visit_that_is_written_down_afterwards_takes_them_back() {
        WatchedScales scales = among(4, robbed(box(21), 24).until("25T10:00"), Duration.ZERO, "25T10:00");
        assertThat(told(scales)).hasSize(1);
        scales.visited(VisitKind.LOOKED, "24T12:00");
        assertThat(scales.told(Kind.ROBBING, Stage.WITHDRAWN)).hasSize(1);
    }

    @Test
    void a_zero_point_that_fell_while_the_node_was_silent_is_no_robbers() {
        TrapDays days = box(21).until("24T12:00").jump(-0.33).until(END).silent("24T11:15", "24T12:45");
        assertThat(told(among(4, days, Duration.ZERO))).isEmpty();
    }

    @Test
    void of_a_box_hung_the_day_before_nobody_knows_what_is_usual() {
        assertThat(told(among(4, robbed(box(21), 21), Duration.ZERO))).isEmpty();
    }

    @Test
    void they_are_told_as_well_where_the_other_scales_are_heard_of_six_hours_late() {
        assertThat(told(among(4, robbed(box(21), 24), Duration.ofHours(6)))).hasSize(1);
    }

    @Test
    void how_near_a_lone_scale_came_to_robbers_is_asked_for_the_morning_after() {
        WatchedScales scales =
                among(4, box(21).until("24T12:00").jump(-0.33), Duration.ZERO).hear();
        assertThat(scales.nearest(Kind.ROBBING, "25T00:00", "25T12:00")).satisfies(nearest -> {
            assertThat(nearest.at().orElseThrow()).isBetween(at("25T05:00"), at("25T08:30"));
            assertThat(nearest.odds()).isLessThan(nearest.needed());
            assertThat(nearest.heldBack()).contains("a zero point that jumps and hands take all at once");
        });
        assertThat(scales.nearest(Kind.ROBBING, "25T12:00", "25T20:00").heldBack())
                .contains("Nor was there a morning by which this box had been weighed");
    }

    @Test
    void a_zero_point_that_fell_as_far_is_no_robbers() {
        assertThat(told(among(4, box(21).until("24T12:00").jump(-0.33), Duration.ZERO)))
                .isEmpty();
    }

    @Test
    void where_too_few_scales_hang_near_by_nobody_knows_what_drying_took() {
        assertThat(told(among(2, robbed(box(21), 24), Duration.ZERO))).isEmpty();
    }

    @Test
    void a_line_that_dries_alike_has_no_robbers() {
        List<TrapDays> line = IntStream.range(0, 4)
                .mapToObj(i -> robbed(box(30 + i), 24).until(END))
                .toList();
        assertThat(told(WatchedScales.hang(robbed(box(21), 24).until(END), line, Duration.ZERO)))
                .isEmpty();
    }

    @Test
    void comb_that_the_keeper_took_out_was_not_robbed() {
        WatchedScales scales = among(4, robbed(box(21), 24), Duration.ZERO).visited(VisitKind.LOOKED, "24T12:00");
        assertThat(told(scales)).isEmpty();
    }

    @Test
    void a_swarm_that_loses_weight_by_day_is_not_robbed() {
        TrapDays days = box(21).until("22T12:00").swarm(1.5, Duration.ofMinutes(20));
        assertThat(told(among(4, robbed(days, 24), Duration.ZERO))).isEmpty();
    }
}
