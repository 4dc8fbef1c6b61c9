package org.duskline.analyzer.evening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;

class AtTheTrapTest {
    private static final FlightEnd TONIGHT = FlightEnd.tonight(48, 16, Line.EVENING, Line.ZONE, List.of());
    private static final Duration MINUTE = Duration.ofMinutes(1);

    @Test
    void bees_that_still_fly_are_counted_a_minute() {
        SampleStream stream = before(Duration.ofHours(1)).flying(6).lasting(Duration.ofMinutes(30));
        AtTheTrap now = AtTheTrap.now(stream.samples(), stream.end(), TONIGHT);
        assertThat(((AtTheTrap.StillFlying) now).perMinute()).isCloseTo(6, within(0.3));
    }

    @Test
    void twelve_minutes_without_a_bee_after_dusk_mean_close_now() {
        SampleStream stream = before(Duration.ZERO)
                .flying(6)
                .lasting(Duration.ofMinutes(20))
                .flying(0)
                .lasting(Duration.ofMinutes(12));
        AtTheTrap.Quiet quiet = (AtTheTrap.Quiet) AtTheTrap.now(stream.samples(), stream.end(), TONIGHT);
        assertThat(quiet.quiet()).isEqualTo(Duration.ofMinutes(12));
        assertThat(quiet.closeNow()).isTrue();
    }

    @Test
    void a_lull_by_day_is_not_the_end_of_flight() {
        SampleStream stream = before(Duration.ofHours(4))
                .outside(20)
                .flying(6)
                .lasting(Duration.ofMinutes(20))
                .flying(0)
                .lasting(Duration.ofMinutes(15));
        AtTheTrap.Quiet quiet = (AtTheTrap.Quiet) AtTheTrap.now(stream.samples(), stream.end(), TONIGHT);
        assertThat(quiet.closeNow()).isFalse();
    }

    @Test
    void a_cold_afternoon_without_a_bee_is() {
        SampleStream stream = before(Duration.ofHours(4))
                .outside(8)
                .flying(6)
                .lasting(Duration.ofMinutes(20))
                .flying(0)
                .lasting(Duration.ofMinutes(15));
        assertThat(((AtTheTrap.Quiet) AtTheTrap.now(stream.samples(), stream.end(), TONIGHT)).closeNow())
                .isTrue();
    }

    @Test
    void a_guard_at_the_door_every_five_minutes_of_the_night_does_not_keep_anybody_waiting() {
        SampleStream stream = before(Duration.ofHours(1))
                .flying(6)
                .lasting(Duration.ofHours(1))
                .flying(0.2)
                .lasting(Duration.ofHours(2));
        AtTheTrap.Stragglers stragglers = (AtTheTrap.Stragglers) AtTheTrap.now(stream.samples(), stream.end(), TONIGHT);
        assertThat(stragglers.perMinute()).isCloseTo(0.2, within(0.05));
    }

    @Test
    void the_same_few_bees_by_day_are_flight() {
        SampleStream stream =
                before(Duration.ofHours(4)).outside(20).flying(0.2).lasting(Duration.ofHours(2));
        assertThat(AtTheTrap.now(stream.samples(), stream.end(), TONIGHT)).isInstanceOf(AtTheTrap.StillFlying.class);
    }

    /** What passed while the counter was off is unknown, and is not taken for a calm. */
    @Test
    void a_counter_that_has_just_restarted_tells_the_rate_since_then() {
        List<Sample> before = before(Duration.ofHours(5))
                .flying(6)
                .lasting(Duration.ofHours(1))
                .samples();
        SampleStream after = before(Duration.ofHours(2)).flying(6).lasting(Duration.ofMinutes(3));
        List<Sample> both =
                Stream.concat(before.stream(), after.samples().stream()).toList();
        AtTheTrap.StillFlying flying = (AtTheTrap.StillFlying) AtTheTrap.now(both, after.end(), TONIGHT);
        assertThat(flying.perMinute()).isCloseTo(6, within(0.3));
    }

    @Test
    void a_trap_without_a_counter_goes_by_sun_and_temperature() {
        SampleStream warm =
                before(Duration.ofHours(2)).outside(18).weighing(1.4).lasting(Duration.ofMinutes(30));
        assertThat(AtTheTrap.now(warm.samples(), warm.end(), TONIGHT))
                .isEqualTo(new AtTheTrap.ByTheLight(false, "civil dusk"));
        SampleStream cold = before(Duration.ofHours(2)).outside(7).weighing(1.4).lasting(Duration.ofMinutes(30));
        assertThat(AtTheTrap.now(cold.samples(), cold.end(), TONIGHT))
                .isEqualTo(new AtTheTrap.ByTheLight(true, "too cold to fly"));
        Instant night = TONIGHT.at().plusSeconds(600);
        assertThat(AtTheTrap.now(List.of(), night, TONIGHT)).isEqualTo(new AtTheTrap.ByTheLight(true, "civil dusk"));
    }

    @Test
    void a_silent_node_says_how_long_it_has_been_silent() {
        SampleStream stream = before(Duration.ofHours(1)).flying(0).lasting(Duration.ofMinutes(30));
        Instant later = stream.end().plus(Duration.ofHours(2));
        assertThat(AtTheTrap.now(stream.samples(), later, TONIGHT))
                .isEqualTo(new AtTheTrap.Unheard(Duration.ofHours(2), true));
    }

    private static SampleStream before(Duration dusk) {
        return SampleStream.from(TONIGHT.at().minus(dusk).toString(), MINUTE);
    }
}
