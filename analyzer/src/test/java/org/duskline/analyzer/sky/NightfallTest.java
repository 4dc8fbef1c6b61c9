package org.duskline.analyzer.sky;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.duskline.analyzer.stats.CheckFile;
import org.duskline.analyzer.stats.CheckFile.Row;
import org.junit.jupiter.api.Test;

/** Evenings, checked against the ephemeris of the calendar days that they span. */
class NightfallTest {
    @Test
    void an_ordinary_evening_has_the_dusk_of_its_day_and_the_dawn_of_the_next() {
        Row saturday = row("Vienna", "2026-03-28");
        Row sunday = row("Vienna", "2026-03-29");
        Nightfall.Dark night = (Nightfall.Dark) at(saturday);
        near(night.sunset(), saturday.text("sunset_utc"));
        near(night.dusk(), saturday.text("civil_dusk_utc"));
        near(night.dawn(), sunday.text("civil_dawn_utc"));
        near(night.sunrise(), sunday.text("sunrise_utc"));
    }

    @Test
    void the_south_has_its_evenings_too() {
        Row here = row("Hobart", "2026-12-21");
        Nightfall.Dark night = (Nightfall.Dark) at(here);
        near(night.dusk(), here.text("civil_dusk_utc"));
        assertThat(night.dawn()).isAfter(night.dusk());
    }

    @Test
    void in_june_at_sixty_four_degrees_twilight_lasts_all_night() {
        Row here = row("Umea", "2026-06-21");
        Nightfall.Bright night = (Nightfall.Bright) at(here);
        near(night.sunset(), here.text("sunset_utc"));
        assertThat(night.lowest()).isBetween(night.sunset(), night.sunrise());
    }

    @Test
    void a_sunset_after_midnight_belongs_to_the_evening_before() {
        // the ephemeris lists the sunset of 20 June at 00:03:50 on the 21st
        Row next = row("Reykjavik", "2026-06-21");
        Nightfall night = at(next, date(next).minusDays(1));
        near(((Nightfall.Bright) night).sunset(), next.text("sunset_utc"));
        near(((Nightfall.Bright) night).sunrise(), next.text("sunrise_utc"));
    }

    @Test
    void the_midnight_sun_never_sets_and_the_polar_night_never_begins() {
        assertThat(at(row("Tromso", "2026-06-21"))).isInstanceOf(Nightfall.Sunlit.class);
        assertThat(at(row("Tromso", "2026-12-21"))).isInstanceOf(Nightfall.Sunless.class);
    }

    @Test
    void every_day_of_the_table_has_a_nightfall_that_fits_its_dusk() {
        for (Row row : CheckFile.table("05-sun-computed-2026.csv")) {
            Nightfall night = at(row);
            String state = row.text("sun_state");
            if (state.equals("up_all_day")) {
                assertThat(night).as("%s", row).isInstanceOf(Nightfall.Sunlit.class);
            } else if (state.equals("down_all_day")) {
                assertThat(night).as("%s", row).isInstanceOf(Nightfall.Sunless.class);
            } else if (night instanceof Nightfall.Dark dark) {
                assertThat(dark.sunset()).isBefore(dark.dusk());
                assertThat(dark.dusk()).isBefore(dark.dawn());
                assertThat(dark.dawn()).isBefore(dark.sunrise());
                boolean beforeMidnight =
                        dark.dusk().atZone(zone(row)).toLocalDate().equals(date(row));
                Nightfall listed = beforeMidnight ? night : at(row, date(row).minusDays(1));
                String[] dusks = row.text("civil_dusk_utc").split(" ");
                near(((Nightfall.Dark) listed).dusk(), dusks[beforeMidnight ? dusks.length - 1 : 0]);
            } else {
                assertThat(row.text("civil_state")).as("%s", row).isEqualTo("above_minus6_all_day");
            }
        }
    }

    private static Nightfall at(Row row) {
        return at(row, date(row));
    }

    private static Nightfall at(Row row, LocalDate date) {
        return Nightfall.at(row.number("lat"), row.number("lon"), date, zone(row));
    }

    private static LocalDate date(Row row) {
        return LocalDate.parse(row.text("local_date"));
    }

    private static ZoneId zone(Row row) {
        return ZoneId.of(row.text("zone"));
    }

    private static void near(Instant found, String said) {
        assertThat(Math.abs(Duration.between(Instant.parse(said), found).toSeconds()))
                .as("%s against %s", found, said)
                .isLessThanOrEqualTo(60);
    }

    private static Row row(String place, String date) {
        return CheckFile.table("05-sun-computed-2026.csv").stream()
                .filter(row -> row.text("place").equals(place)
                        && row.text("local_date").equals(date))
                .findFirst()
                .orElseThrow();
    }
}
