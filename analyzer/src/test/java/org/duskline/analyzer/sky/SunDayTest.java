package org.duskline.analyzer.sky;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;
import org.duskline.analyzer.stats.CheckFile;
import org.duskline.analyzer.stats.CheckFile.Row;
import org.junit.jupiter.api.Test;

/** Tables of the US Naval Observatory, NREL's solar position algorithm, and PyEphem. */
class SunDayTest {
    /** The library's sun is good to about 0.004 degrees; the flatter its path, the more time that is. */
    private static long allowedSeconds(double latitude) {
        return Math.abs(latitude) > 69 ? 150 : Math.abs(latitude) > 63 ? 60 : 30;
    }

    @Test
    void fifteen_places_over_a_year_agree_with_the_ephemeris() {
        int days = 0;
        for (Row row : CheckFile.table("05-sun-computed-2026.csv")) {
            SunDay day = day(row);
            long seconds = allowedSeconds(row.number("lat"));
            assertThat(Duration.between(
                                    day.date().atStartOfDay(day.zone()),
                                    day.date().plusDays(1).atStartOfDay(day.zone()))
                            .toMinutes())
                    .isEqualTo((long) (60 * row.number("hours_in_local_day")));
            agrees(row, day.sun(), row.text("sun_state"), "sunrise_utc", "sunset_utc", seconds);
            agrees(row, day.twilight(), row.text("civil_state"), "civil_dawn_utc", "civil_dusk_utc", seconds);
            near(row, Optional.of(day.noon()), row.text("solar_noon_utc"), 60);
            days++;
        }
        assertThat(days).isEqualTo(315);
    }

    /** The equation of time moves noon by half an hour over a year, so that midnight passes through it in a far zone. */
    @Test
    void a_trap_whose_zone_is_half_the_earth_away_has_a_noon_on_each_day() {
        for (double longitude = 176; longitude <= 180; longitude += 0.5) {
            for (LocalDate date = LocalDate.of(2026, 1, 1); date.getYear() == 2026; date = date.plusDays(1)) {
                SunDay day = SunDay.at(-38, longitude, date, ZoneId.of("UTC"));
                assertThat(Duration.between(
                                date.atStartOfDay(day.zone()), day.noon().atZone(day.zone())))
                        .isBetween(Duration.ZERO, Duration.ofMinutes(24 * 60 + 2));
            }
        }
    }

    @Test
    void published_almanac_times_are_met_north_and_south() {
        int met = 0;
        for (Row row : CheckFile.table("05-sun-published.csv")) {
            SunDay day = day(row.number("lat"), row.number("lon"), row);
            long rounding = row.text("resolution").equals("s") ? 0 : 30;
            long seconds = rounding + allowedSeconds(row.number("lat"));
            Optional<Instant> found = switch (row.text("event")) {
                case "sunrise" -> up(day.sun());
                case "sunset" -> down(day.sun());
                case "civil_dawn" -> up(day.twilight());
                case "civil_dusk" -> down(day.twilight());
                case "noon" -> Optional.of(day.noon());
                default -> throw new IllegalArgumentException(row.text("event"));
            };
            String published = row.text("published_local_time");
            if (published.equals("none")) {
                assertThat(found).as("%s", row).isEmpty();
            } else {
                Instant said = day.date()
                        .atTime(LocalTime.parse(published))
                        .atZone(day.zone())
                        .toInstant();
                assertThat(found).as("%s", row).isPresent();
                assertThat(Math.abs(Duration.between(said, found.get()).toSeconds()))
                        .as("%s", row)
                        .isLessThanOrEqualTo(seconds);
            }
            met++;
        }
        assertThat(met).isEqualTo(193);
    }

    private static void agrees(Row row, Course course, String state, String up, String down, long seconds) {
        switch (state) {
            case "normal" -> {
                assertThat(course).as("%s", row).isInstanceOf(Course.Crosses.class);
                near(row, up(course), row.text(up), seconds);
                near(row, down(course), row.text(down), seconds);
            }
            case "up_all_day", "above_minus6_all_day" ->
                assertThat(course).as("%s", row).isInstanceOf(Course.StaysAbove.class);
            default -> assertThat(course).as("%s", row).isInstanceOf(Course.StaysBelow.class);
        }
    }

    private static void near(Row row, Optional<Instant> found, String said, long seconds) {
        if (said.equals("none")) {
            assertThat(found).as("%s", row).isEmpty();
            return;
        }
        assertThat(found).as("%s", row).isPresent();
        assertThat(Math.abs(Duration.between(Instant.parse(said.split(" ")[0]), found.get())
                        .toSeconds()))
                .as("%s against %s", row, found)
                .isLessThanOrEqualTo(seconds);
    }

    private static Optional<Instant> up(Course course) {
        return course instanceof Course.Crosses crosses ? crosses.up() : Optional.empty();
    }

    private static Optional<Instant> down(Course course) {
        return course instanceof Course.Crosses crosses ? crosses.down() : Optional.empty();
    }

    private static SunDay day(Row row) {
        return day(row.number("lat"), row.number("lon"), row);
    }

    private static SunDay day(double latitude, double longitude, Row row) {
        return SunDay.at(latitude, longitude, LocalDate.parse(row.text("local_date")), ZoneId.of(row.text("zone")));
    }
}
