package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Random;
import org.junit.jupiter.api.Test;

class QuietHoursTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

    private final QuietHours night = new QuietHours(LocalTime.of(22, 0), LocalTime.of(7, 0));

    @Test
    void what_comes_by_day_is_told_at_once() {
        Instant noon = Instant.parse("2026-05-12T10:00:00Z");
        assertThat(night.nextLoud(noon, VIENNA)).isEqualTo(noon);
    }

    @Test
    void what_comes_before_or_after_midnight_waits_for_the_same_morning() {
        Instant morning = Instant.parse("2026-05-13T05:00:00Z");
        assertThat(night.nextLoud(Instant.parse("2026-05-12T20:00:00Z"), VIENNA))
                .isEqualTo(morning);
        assertThat(night.nextLoud(Instant.parse("2026-05-13T04:59:00Z"), VIENNA))
                .isEqualTo(morning);
        assertThat(night.nextLoud(morning, VIENNA)).isEqualTo(morning);
    }

    /** Clocks in Vienna go forward on 29 March 2026 at 01:00 UTC. */
    @Test
    void the_morning_is_the_persons_own_also_when_summer_time_begins() {
        assertThat(night.nextLoud(Instant.parse("2026-03-28T22:00:00Z"), VIENNA))
                .isEqualTo(Instant.parse("2026-03-29T05:00:00Z"));
    }

    @Test
    void hours_within_one_day_are_quiet_too() {
        QuietHours nap = new QuietHours(LocalTime.of(13, 0), LocalTime.of(15, 0));
        assertThat(nap.nextLoud(Instant.parse("2026-05-12T11:30:00Z"), VIENNA))
                .isEqualTo(Instant.parse("2026-05-12T13:00:00Z"));
        assertThat(nap.nextLoud(Instant.parse("2026-05-12T13:30:00Z"), VIENNA))
                .isEqualTo(Instant.parse("2026-05-12T13:30:00Z"));
    }

    @Test
    void pauses_grow_to_their_limit_and_never_fall_into_step() {
        Random random = new Random(7);
        RetrySchedule schedule = RetrySchedule.USUAL;
        for (int failures = 1; failures < 200; failures++) {
            Duration atMost = failures < 7 ? Duration.ofSeconds(30L << (failures - 1)) : Duration.ofMinutes(30);
            assertThat(schedule.pause(failures, random)).isBetween(atMost.dividedBy(2), atMost);
        }
        assertThat(schedule.pause(5, random)).isNotEqualTo(schedule.pause(5, random));
    }
}
