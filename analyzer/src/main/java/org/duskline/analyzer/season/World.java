package org.duskline.analyzer.season;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/**
 * Where and when a line hangs, and what its country is like. The zones only give clocks; the places are invented.
 *
 * @param latitude of the middle of the line
 * @param longitude of the middle of the line
 * @param zone the keeper's clock
 * @param firstDay first day of the recording; it begins at local midnight
 * @param days length
 * @param climate the weather's habits
 * @param swarmsPerTrapMonth arrivals an empty trap can expect in 30 days: 0.14 to 0.65 (R8)
 * @param losingScoutingsPerTrapMonth scoutings that come to nothing; "a dozen sites danced, one taken" (R26), spread
 *     over the country's holes: invented
 * @param visitEveryDays days between the keeper's looks; every 2 to 3 days (R10) to a fortnight (P)
 */
public record World(
        double latitude,
        double longitude,
        ZoneId zone,
        LocalDate firstDay,
        int days,
        Climate climate,
        double swarmsPerTrapMonth,
        double losingScoutingsPerTrapMonth,
        double visitEveryDays) {

    private record Country(String zone, double west, double east, double low, double high) {}

    private static final List<Country> NORTH = List.of(
            new Country("Europe/Lisbon", -9, -7, 37, 42),
            new Country("Europe/Dublin", -10, -6, 51, 55),
            new Country("Europe/Berlin", 6, 15, 47, 55),
            new Country("Europe/Athens", 20, 26, 35, 41),
            new Country("Europe/Helsinki", 22, 30, 60, 62),
            new Country("America/Chicago", -98, -87, 35, 48),
            new Country("America/Vancouver", -124, -117, 48, 55),
            new Country("Asia/Tokyo", 133, 141, 35, 43));
    private static final List<Country> SOUTH = List.of(
            new Country("Australia/Hobart", 144, 148, -43, -40),
            new Country("Australia/Adelaide", 136, 141, -37, -35),
            new Country("Pacific/Auckland", 168, 177, -46, -35),
            new Country("America/Argentina/Buenos_Aires", -66, -58, -41, -35));
    /** Share of worlds in the southern half; invented. */
    private static final double SOUTHERN = 0.25;

    static World draw(Dice dice, int days) {
        boolean south = dice.chance(SOUTHERN);
        Country country = dice.pick(south ? SOUTH : NORTH);
        double latitude = dice.uniform(country.low(), country.high());
        int year = dice.whole(2022, 2029);
        // Swarming: May to July at 42 degrees north (R17), from late April in the United Kingdom (R18), from early
        // April in Louisiana (R12); the southern half September to December (M+).
        LocalDate first = south ? LocalDate.of(year, 9, 5) : LocalDate.of(year, 4, 1);
        int later = (int) Math.round(Math.max(0, (Math.abs(latitude) - 40) * 1.3)) + dice.whole(0, 24);
        return new World(
                latitude,
                dice.uniform(country.west(), country.east()),
                ZoneId.of(country.zone()),
                first.plusDays(later),
                days,
                Climate.draw(dice.fork("climate"), latitude),
                dice.uniform(0.14, 0.65),
                dice.uniform(0.2, 1.2),
                dice.lognormal(7, 0.5, 2, 15));
    }

    public Instant start() {
        return firstDay.atStartOfDay(zone).toInstant();
    }

    double startSecond() {
        return start().getEpochSecond();
    }

    double endSecond() {
        return startSecond() + Duration.ofDays(days).toSeconds();
    }

    /** Local solar hour, 0 to 24, without the equation of time (at most a quarter of an hour). */
    double solarHour(double second) {
        double hour = (second / 3600 + longitude / 15) % 24;
        return hour < 0 ? hour + 24 : hour;
    }

    /** Days since the local midsummer's heat, negative before it. */
    double daysFromHeat(double second) {
        double dayOfYear = second / 86400 % 365.2425;
        double heat = latitude > 0 ? 203 : 20.6;
        double away = dayOfYear - heat;
        return away > 183 ? away - 365.2425 : away < -183 ? away + 365.2425 : away;
    }
}
