package org.duskline.analyzer.evening;

import java.time.Duration;
import java.util.Optional;

/**
 * How a keeper goes round.
 *
 * @param home where the round begins and ends; without it, at its first trap
 * @param speedKmh the keeper's own speed measured as the crow flies, roads and all, km/h; above 0
 * @param perStop how long a stop takes, from parking to driving on
 * @param sureFrom a finding at least this likely is worth the drive, 0 to 1; below it the trap is listed apart
 */
public record RoundSettings(Optional<Place> home, double speedKmh, Duration perStop, double sureFrom) {
    /** 30 km/h as the crow flies, 25 minutes a stop, 80 % sure: our own starting values, for the keeper to change. */
    public static final RoundSettings USUAL = new RoundSettings(Optional.empty(), 30, Duration.ofMinutes(25), 0.8);

    public RoundSettings {
        if (!(speedKmh > 0)) {
            throw new IllegalArgumentException("A round at " + speedKmh + " km/h never ends. Give a speed above 0.");
        }
        if (perStop.isNegative()) {
            throw new IllegalArgumentException("A stop cannot take " + perStop + ".");
        }
        if (!(sureFrom >= 0 && sureFrom <= 1)) {
            throw new IllegalArgumentException(
                    "How sure a finding must be lies between 0 and 1, not at " + sureFrom + ".");
        }
    }

    public RoundSettings from(Place place) {
        return new RoundSettings(Optional.of(place), speedKmh, perStop, sureFrom);
    }

    Duration drive(double km) {
        return Duration.ofSeconds(Math.round(km / speedKmh * 3600));
    }
}
