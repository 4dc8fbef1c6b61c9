package org.duskline.analyzer.evening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.stats.CheckFile;
import org.duskline.analyzer.stats.CheckFile.Row;
import org.junit.jupiter.api.Test;

/** Dusk and dawn by the ephemeris; what bees make of it by practice. */
class FlightEndTest {
    private static final List<PastEvening> NONE = List.of();

    @Test
    void without_a_past_flight_ends_at_civil_dusk_and_the_window_at_the_next_dawn() {
        Row today = row("Vienna", "2026-03-29");
        Row tomorrow = row("Vienna", "2026-03-30");
        FlightEnd end = end(today, NONE);
        near(end.at(), today.text("civil_dusk_utc"));
        near(end.window().opens(), today.text("civil_dusk_utc"));
        near(end.window().closes(), tomorrow.text("civil_dawn_utc"));
        assertThat(end.reason()).isEqualTo("civil dusk");
        assertThat(end.sure()).isTrue();
    }

    @Test
    void the_night_the_clocks_go_forward_moves_no_instant() {
        Row before = row("Vienna", "2026-03-28");
        Row after = row("Vienna", "2026-03-29");
        Window window = end(before, NONE).window();
        near(window.opens(), before.text("civil_dusk_utc"));
        near(window.closes(), after.text("civil_dawn_utc"));
        assertThat(SheetWords.window(window, ZoneId.of("Europe/Vienna"))).isEqualTo("18:50 to 06:07");
    }

    @Test
    void the_south_closes_at_its_own_dusk() {
        Row today = row("Christchurch", "2026-12-21");
        near(end(today, NONE).at(), today.text("civil_dusk_utc"));
    }

    @Test
    void in_a_night_that_stays_bright_flight_ends_at_sunset_and_is_not_sure() {
        Row today = row("Umea", "2026-06-21");
        FlightEnd end = end(today, NONE);
        near(end.at(), today.text("sunset_utc"));
        assertThat(end.reason()).contains("does not get dark");
        assertThat(end.sure()).isFalse();
        assertThat(end.window().closes()).isAfter(end.at());
    }

    @Test
    void where_the_sun_does_not_set_the_entrance_must_be_watched() {
        Row today = row("Tromso", "2026-06-21");
        FlightEnd end = end(today, NONE);
        Instant middle = end.window()
                .opens()
                .plus(Duration.between(end.window().opens(), end.window().closes())
                        .dividedBy(2));
        // the sun stands lowest half a day after the noon that the ephemeris lists
        Instant lowest = Instant.parse(today.text("solar_noon_utc")).plus(Duration.ofHours(12));
        assertThat(Duration.between(middle, lowest).abs()).isLessThan(Duration.ofMinutes(5));
        assertThat(end.reason()).contains("watch the entrance");
        assertThat(end.sure()).isFalse();
    }

    @Test
    void earlier_evenings_of_its_own_traffic_count_more_than_the_sun() {
        List<PastEvening> evenings = List.of(evening(-50, null), evening(-40, null), evening(-300, null));
        FlightEnd end = end(row("Vienna", "2026-05-15"), evenings);
        near(end.at().plus(Duration.ofMinutes(50)), row("Vienna", "2026-05-15").text("civil_dusk_utc"));
        assertThat(end.reason()).contains("own traffic");
    }

    @Test
    void stragglers_far_into_the_dark_are_not_waited_for() {
        FlightEnd end = end(row("Vienna", "2026-05-15"), List.of(evening(240, null)));
        near(end.at().minus(Duration.ofMinutes(30)), row("Vienna", "2026-05-15").text("civil_dusk_utc"));
    }

    @Test
    void cold_evenings_end_flight_before_dusk_but_one_cold_evening_does_not() {
        Row today = row("Vienna", "2026-05-15");
        FlightEnd usuallyCold = end(today, List.of(evening(null, -120), evening(null, -100), evening(null, null)));
        near(usuallyCold.at().plus(Duration.ofMinutes(110)), today.text("civil_dusk_utc"));
        assertThat(usuallyCold.reason()).contains("colder than 10 C");
        FlightEnd onceCold = end(today, List.of(evening(null, -120), evening(null, null), evening(null, null)));
        near(onceCold.at(), today.text("civil_dusk_utc"));
    }

    @Test
    void a_night_of_minutes_still_has_a_window() {
        for (int day = 0; day < 60; day++) {
            LocalDate date = LocalDate.parse("2026-05-15").plusDays(day);
            FlightEnd end = FlightEnd.tonight(
                    65.9, 18, date, ZoneId.of("Europe/Stockholm"), Collections.nCopies(3, evening(30, null)));
            assertThat(end.window().best())
                    .isBetween(end.window().opens(), end.window().closes());
        }
    }

    @Test
    void an_evening_is_read_off_the_samples() {
        // civil dusk at 48.2 N, 16.4 E on 2026-05-15 is 19:04:39 UTC
        SampleStream stream = SampleStream.from("2026-05-15T12:00:00Z", Duration.ofMinutes(5))
                .outside(16)
                .flying(20)
                .lasting(Duration.ofHours(6))
                .outside(11)
                .flying(0)
                .lasting(Duration.ofMinutes(30))
                .outside(9)
                .lasting(Duration.ofHours(5));
        PastEvening evening = PastEvening.read(
                LocalDate.parse("2026-05-15"), 48.2082, 16.3738, ZoneId.of("Europe/Vienna"), stream.samples());
        assertThat(evening.lastFlight().orElseThrow().toMinutes()).isCloseTo(-69, within(2L));
        assertThat(evening.cold().orElseThrow().toMinutes()).isCloseTo(-34, within(2L));
    }

    @Test
    void an_evening_without_counter_and_thermometer_says_nothing_and_a_restart_is_no_flight() {
        SampleStream scaleOnly = SampleStream.from("2026-05-15T12:00:00Z", Duration.ofMinutes(5))
                .weighing(1.2)
                .lasting(Duration.ofHours(10));
        PastEvening blind = read(scaleOnly);
        assertThat(blind.lastFlight()).isEmpty();
        assertThat(blind.cold()).isEmpty();
        SampleStream restarted = SampleStream.from("2026-05-15T12:00:00Z", Duration.ofMinutes(5))
                .flying(0)
                .lasting(Duration.ofHours(5))
                .restarting()
                .lasting(Duration.ofHours(5));
        assertThat(read(restarted).lastFlight()).isEmpty();
    }

    private static PastEvening read(SampleStream stream) {
        return PastEvening.read(
                LocalDate.parse("2026-05-15"), 48.2082, 16.3738, ZoneId.of("Europe/Vienna"), stream.samples());
    }

    private static PastEvening evening(Integer lastFlightMinutes, Integer coldMinutes) {
        return new PastEvening(
                LocalDate.parse("2026-05-14"),
                Optional.ofNullable(lastFlightMinutes).map(Duration::ofMinutes),
                Optional.ofNullable(coldMinutes).map(Duration::ofMinutes));
    }

    private static FlightEnd end(Row row, List<PastEvening> evenings) {
        return FlightEnd.tonight(
                row.number("lat"),
                row.number("lon"),
                LocalDate.parse(row.text("local_date")),
                ZoneId.of(row.text("zone")),
                evenings);
    }

    private static void near(Instant found, String said) {
        assertThat(found).isCloseTo(Instant.parse(said), within(60, ChronoUnit.SECONDS));
    }

    private static Row row(String place, String date) {
        return CheckFile.table("05-sun-computed-2026.csv").stream()
                .filter(row -> row.text("place").equals(place)
                        && row.text("local_date").equals(date))
                .findFirst()
                .orElseThrow();
    }
}
