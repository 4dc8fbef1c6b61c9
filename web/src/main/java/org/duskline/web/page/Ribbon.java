package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.evening.Stop;
import org.duskline.web.page.board.Night;
import org.duskline.web.page.board.Tonight;

/**
 * The evening as a ribbon of sky from the afternoon to the next morning, with the window for closing on it.
 *
 * @param night the dark stretch
 * @param dusk the stretch of fading light
 * @param dawn the stretch of growing light
 * @param window when to close; empty when nothing is to be closed
 * @param now where the present is; empty when outside
 * @param ticks hours
 */
public record Ribbon(
        Shade night, Shade dusk, Shade dawn, Optional<Shade> window, Optional<String> now, List<Tick> ticks) {
    private static final Duration BEFORE_DUSK = Duration.ofHours(7);
    private static final Duration AFTER_DAWN = Duration.ofHours(2);
    private static final Duration TWILIGHT = Duration.ofMinutes(50);

    static Ribbon of(Tonight tonight, Night night) {
        TimeScale scale =
                new TimeScale(night.dusk().minus(BEFORE_DUSK), night.dawn().plus(AFTER_DAWN));
        return new Ribbon(
                shade(scale, night.dusk(), night.dawn()),
                shade(scale, night.dusk().minus(TWILIGHT), night.dusk()),
                shade(scale, night.dawn(), night.dawn().plus(TWILIGHT)),
                window(tonight.sheet().round().stops(), scale),
                Optional.of(tonight.now()).filter(scale::covers).map(scale::at),
                scale.ticks(3, tonight.sheet().zone()));
    }

    private static Optional<Shade> window(List<Stop> stops, TimeScale scale) {
        Optional<Instant> opens =
                stops.stream().map(stop -> stop.flightEnd().window().best()).min(Comparator.naturalOrder());
        Optional<Instant> shuts =
                stops.stream().map(stop -> stop.flightEnd().window().closes()).max(Comparator.naturalOrder());
        return opens.map(from -> shade(scale, from, shuts.orElseThrow()));
    }

    private static Shade shade(TimeScale scale, Instant from, Instant until) {
        return new Shade(scale.at(from), TimeScale.text(Math.max(0, scale.percent(until) - scale.percent(from))));
    }
}
