package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.duskline.analyzer.sky.Nightfall;
import org.duskline.collector.trap.Trap;

/** The nights at a trap, from the sun alone. Safe for use by many threads. */
final class StoredNights {
    private static final Duration HALF_DAY = Duration.ofHours(12);

    /** In a longer view a night is narrower than a pen's stroke. */
    private static final Duration LONGEST_VIEW = Duration.ofDays(70);

    /** Finding a night takes the sun's course over two days; a line's nights are asked for on every look at it. */
    private static final int REMEMBERED = 4000;

    private final Map<Evening, Optional<Night>> known = new ConcurrentHashMap<>();

    private record Evening(double latitude, double longitude, ZoneId zone, LocalDate date) {}

    List<Night> of(Trap trap, Instant from, Instant until) {
        if (Duration.between(from, until).compareTo(LONGEST_VIEW) > 0) {
            return List.of();
        }
        LocalDate first = from.atZone(trap.zone()).toLocalDate().minusDays(1);
        LocalDate last = until.atZone(trap.zone()).toLocalDate();
        return first.datesUntil(last.plusDays(1))
                .flatMap(evening -> after(trap, evening).stream())
                .filter(night -> night.dawn().isAfter(from) && night.dusk().isBefore(until))
                .toList();
    }

    /** The night after the noon of a date; empty where the sun does not set. */
    Optional<Night> after(Trap trap, LocalDate evening) {
        if (known.size() > REMEMBERED) {
            known.clear();
        }
        return known.computeIfAbsent(
                new Evening(trap.latitude(), trap.longitude(), trap.zone(), evening),
                asked -> night(asked.latitude(), asked.longitude(), asked.zone(), asked.date()));
    }

    private static Optional<Night> night(double latitude, double longitude, ZoneId zone, LocalDate evening) {
        Nightfall nightfall = Nightfall.at(latitude, longitude, evening, zone);
        if (nightfall instanceof Nightfall.Dark dark) {
            return Optional.of(new Night(dark.dusk(), dark.dawn()));
        }
        if (nightfall instanceof Nightfall.Bright bright) {
            return Optional.of(new Night(bright.sunset(), bright.sunrise()));
        }
        if (nightfall instanceof Nightfall.Sunless sunless) {
            return Optional.of(new Night(sunless.noon(), sunless.noon().plus(HALF_DAY.multipliedBy(2))));
        }
        return Optional.empty();
    }
}
