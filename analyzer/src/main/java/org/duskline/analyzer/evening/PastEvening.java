package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.sky.Nightfall;
import org.duskline.collector.wire.Sample;

/**
 * What an evening showed at a trap: when its bees stopped flying, when it got too cold for them.
 *
 * @param date the evening's local date
 * @param lastFlight how long after the end of the light the last bees flew, negative for before; empty without a
 *     counter, or where nothing flew
 * @param cold how long after the end of the light it stayed below the flight floor, negative for before; empty without a
 *     thermometer, or where it stayed warm
 */
public record PastEvening(LocalDate date, Optional<Duration> lastFlight, Optional<Duration> cold) {

    /**
     * Reads an evening off the samples.
     *
     * @param samples of the trap in time order; those beside the evening are ignored
     */
    public static PastEvening read(
            LocalDate date, double latitude, double longitude, ZoneId zone, List<Sample> samples) {
        Nightfall night = Nightfall.at(latitude, longitude, date, zone);
        Instant anchor = LightEnd.of(night).at();
        Instant from = date.atTime(15, 0).atZone(zone).toInstant();
        Instant until = LightEnd.of(night).lightAgain();
        List<Sample> evening = samples.stream()
                .filter(sample -> !sample.time().isBefore(from) && sample.time().isBefore(until))
                .toList();
        return new PastEvening(
                date,
                Traffic.lastFlight(evening).map(time -> Duration.between(anchor, time)),
                coldSince(evening).map(time -> Duration.between(anchor, time)));
    }

    private static Optional<Instant> coldSince(List<Sample> evening) {
        Instant since = null;
        for (Sample sample : evening) {
            if (Double.isNaN(sample.cellCelsius())) {
                continue;
            }
            if (sample.cellCelsius() >= FlightEnd.FLOOR_CELSIUS) {
                since = null;
            } else if (since == null) {
                since = sample.time();
            }
        }
        return Optional.ofNullable(since);
    }
}
