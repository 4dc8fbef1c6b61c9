package org.duskline.analyzer.closed;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.closed.Gone.Handled;
import org.duskline.analyzer.evening.SampleStream;
import org.duskline.analyzer.finding.Kind;
import org.junit.jupiter.api.Test;

class ClosedTrapTest {
    private static final ClosedLimits LIMITS = ClosedLimits.USUAL;
    private static final Duration FIVE = Duration.ofMinutes(5);
    private static final Instant CLOSED = Instant.parse("2026-05-12T19:30:00Z");

    @Test
    void bees_that_pass_a_closed_trap_are_a_leak() {
        SampleStream stream =
                night().flying(0).lasting(Duration.ofHours(9)).flying(2).lasting(Duration.ofMinutes(30));
        Notice leak = Leak.find(stream.samples(), CLOSED, LIMITS).orElseThrow();
        assertThat(leak.what()).isEqualTo(Notice.What.LEAKING);
        assertThat(leak.what().kind()).contains(Kind.LEAKING);
        assertThat(leak.onset()).isBetween("2026-05-13T04:20:00Z", "2026-05-13T04:35:00Z");
        assertThat(leak.raised()).isAfter(leak.onset()).isBefore("2026-05-13T04:45:00Z");
        assertThat(leak.said()).contains("bees passed the closed entrance");
    }

    @Test
    void the_bees_about_the_closing_itself_and_a_straggler_at_the_mesh_are_not() {
        SampleStream stream = SampleStream.from("2026-05-12T19:00:00Z", FIVE)
                .flying(20)
                .lasting(Duration.ofMinutes(40))
                .flying(0.1)
                .lasting(Duration.ofHours(8));
        assertThat(Leak.find(stream.samples(), CLOSED, LIMITS)).isEmpty();
    }

    @Test
    void a_counter_that_restarts_in_a_closed_trap_does_not_leak() {
        SampleStream stream =
                night().flying(0).lasting(Duration.ofHours(2)).restarting().lasting(Duration.ofHours(2));
        assertThat(Leak.find(stream.samples(), CLOSED, LIMITS)).isEmpty();
        SampleStream scaleOnly = night().weighing(1.4).lasting(Duration.ofHours(5));
        assertThat(Leak.find(scaleOnly.samples(), CLOSED, LIMITS)).isEmpty();
    }

    @Test
    void a_box_that_climbs_in_the_morning_sun_wakes_somebody_before_it_is_hot() {
        SampleStream stream = night().inside(33)
                .lasting(Duration.ofHours(11))
                .warmingInside(0.1)
                .lasting(Duration.ofHours(1));
        Notice notice = Overheating.find(stream.samples(), CLOSED, LIMITS).orElseThrow();
        assertThat(notice.what().wakesSomebody()).isTrue();
        assertThat(notice.raised()).isBefore("2026-05-13T07:30:00Z");
        assertThat(notice.said()).contains("Shade it or open it now");
    }

    @Test
    void a_hot_box_is_told_at_the_second_reading_and_one_wild_reading_is_not() {
        SampleStream once = night().inside(33)
                .lasting(Duration.ofHours(1))
                .inside(60)
                .lasting(FIVE)
                .inside(33)
                .lasting(Duration.ofHours(1));
        assertThat(Overheating.find(once.samples(), CLOSED, LIMITS)).isEmpty();
        SampleStream hot = night().inside(39).lasting(Duration.ofMinutes(10));
        assertThat(Overheating.find(hot.samples(), CLOSED, LIMITS).orElseThrow().said())
                .contains("39.0 C");
    }

    @Test
    void a_cluster_that_warms_its_own_box_through_the_night_is_not_overheating() {
        SampleStream stream = night().inside(24).warmingInside(0.02).lasting(Duration.ofHours(9));
        assertThat(Overheating.find(stream.samples(), CLOSED, LIMITS)).isEmpty();
    }

    @Test
    void heat_before_the_closing_does_not_count() {
        SampleStream stream = SampleStream.from("2026-05-12T12:00:00Z", FIVE)
                .inside(41)
                .lasting(Duration.ofHours(7))
                .inside(30)
                .lasting(Duration.ofHours(5));
        assertThat(Overheating.find(stream.samples(), CLOSED, LIMITS)).isEmpty();
    }

    @Test
    void without_a_thermometer_inside_two_warm_hours_outside_are_told() {
        SampleStream warm =
                night().outside(12).lasting(Duration.ofHours(14)).outside(27).lasting(Duration.ofHours(3));
        Notice notice = Overheating.find(warm.samples(), CLOSED, LIMITS).orElseThrow();
        assertThat(Duration.between(notice.onset(), notice.raised()).toMinutes())
                .isBetween(120L, 126L);
        assertThat(notice.said()).contains("Nothing measures inside the box");
        SampleStream cool = night().outside(18).lasting(Duration.ofHours(20));
        assertThat(Overheating.find(cool.samples(), CLOSED, LIMITS)).isEmpty();
    }

    @Test
    void a_swarm_left_closed_beyond_the_keepers_limit_is_told_until_it_is_fetched() {
        Instant later = CLOSED.plus(Duration.ofHours(15));
        Notice notice = NotFetched.find(CLOSED, Optional.empty(), later, LIMITS).orElseThrow();
        assertThat(notice.onset()).isEqualTo(CLOSED.plus(LIMITS.fetchWithin()));
        assertThat(notice.said()).contains("15 hours").contains("your limit is 14");
        assertThat(notice.what().kind()).isEmpty();
        assertThat(NotFetched.find(CLOSED, Optional.empty(), CLOSED.plus(Duration.ofHours(13)), LIMITS))
                .isEmpty();
        assertThat(NotFetched.find(CLOSED, Optional.of(CLOSED.plusSeconds(60)), later, LIMITS))
                .isEmpty();
        assertThat(NotFetched.find(CLOSED, Optional.of(CLOSED.minusSeconds(60)), later, LIMITS))
                .isPresent();
    }

    @Test
    void a_box_that_vanishes_is_gone() {
        SampleStream stream =
                night().weighing(9.6).lasting(Duration.ofHours(4)).weighing(0.3).lasting(Duration.ofMinutes(20));
        Notice gone = Gone.find(stream.samples(), 8.2, List.of(), LIMITS).orElseThrow();
        assertThat(gone.onset()).isEqualTo("2026-05-12T23:30:00Z");
        assertThat(gone.said()).startsWith("9.3 kg vanished");
        assertThat(gone.what().kind()).contains(Kind.GONE);
    }

    @Test
    void a_scale_set_to_zero_with_the_box_on_it_shows_the_loss_below_zero() {
        SampleStream stream = night().weighing(1.4)
                .lasting(Duration.ofHours(4))
                .weighing(-8.1)
                .lasting(Duration.ofMinutes(20));
        assertThat(Gone.find(stream.samples(), Double.NaN, List.of(), LIMITS)).isPresent();
    }

    @Test
    void a_colony_that_flies_off_leaves_its_box_behind() {
        SampleStream stream = night().weighing(12.5)
                .lasting(Duration.ofHours(4))
                .weighing(8.2)
                .lasting(Duration.ofHours(2));
        assertThat(Gone.find(stream.samples(), 8.2, List.of(), LIMITS)).isEmpty();
        assertThat(Gone.find(stream.samples(), Double.NaN, List.of(), LIMITS)).isEmpty();
    }

    @Test
    void a_box_that_its_keeper_took_down_is_not_gone() {
        SampleStream stream =
                night().weighing(9.6).lasting(Duration.ofHours(4)).weighing(0.3).lasting(Duration.ofHours(3));
        Handled collected = new Handled(Instant.parse("2026-05-12T23:00:00Z"), Instant.parse("2026-05-13T00:00:00Z"));
        assertThat(Gone.find(stream.samples(), 8.2, List.of(collected), LIMITS)).isEmpty();
    }

    @Test
    void one_lost_reading_is_no_theft() {
        SampleStream stream = night().weighing(9.6)
                .lasting(Duration.ofHours(4))
                .weighing(0.0)
                .lasting(FIVE)
                .weighing(9.6)
                .lasting(Duration.ofHours(1));
        assertThat(Gone.find(stream.samples(), 8.2, List.of(), LIMITS)).isEmpty();
    }

    private static SampleStream night() {
        return SampleStream.from(CLOSED.toString(), FIVE);
    }
}
