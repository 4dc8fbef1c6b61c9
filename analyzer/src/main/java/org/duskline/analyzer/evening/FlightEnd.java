package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.duskline.analyzer.sky.Nightfall;
import org.duskline.analyzer.stats.Robust;

/**
 * When flight ends tonight at a trap, and why then.
 *
 * @param at when the last bees should be in
 * @param window from then until bees may fly again
 * @param reason what decided, in the keeper's words
 * @param sure false where it does not get dark or nothing but the sun is known
 */
public record FlightEnd(Instant at, Window window, String reason, boolean sure) {
    /**
     * Below it bees do not fly, degrees Celsius (a breeder's advice, c. 2019, modbee.com article 228709094; extension
     * services give 12.8 for good flight, Mussen 2010).
     */
    public static final double FLOOR_CELSIUS = 10;

    private static final int EVENINGS = 7;
    private static final Duration NEVER_EARLIER = Duration.ofHours(-5);
    private static final Duration NEVER_LATER = Duration.ofMinutes(30);

    /**
     * Judges tonight from the sun and from the trap's own evenings. The trap's last flight of earlier evenings is used
     * where there are any, no later than half an hour past the end of the light; cold ends flight earlier where it came
     * on most earlier evenings.
     *
     * @param evenings the trap's, latest last; only those since the swarm came say when its bees stop
     */
    public static FlightEnd tonight(
            double latitude, double longitude, LocalDate date, ZoneId zone, List<PastEvening> evenings) {
        LightEnd light = LightEnd.of(Nightfall.at(latitude, longitude, date, zone));
        List<PastEvening> recent = evenings.subList(Math.max(0, evenings.size() - EVENINGS), evenings.size());
        Optional<Duration> own = usual(recent, PastEvening::lastFlight, 1);
        Optional<Duration> cold =
                usual(recent, PastEvening::cold, recent.size() / 2 + 1).filter(offset -> offset.isNegative());
        Duration offset = Duration.ZERO;
        String reason = light.reason();
        if (own.isPresent()) {
            offset = earlier(own.get(), latest(light));
            reason = "when its own traffic ended on earlier evenings";
        }
        if (cold.isPresent() && cold.get().compareTo(offset) < 0) {
            offset = cold.get();
            reason = "when it usually gets colder than " + Math.round(FLOOR_CELSIUS) + " C there";
        }
        offset = offset.compareTo(NEVER_EARLIER) < 0 ? NEVER_EARLIER : offset;
        Instant at = light.at().plus(offset);
        boolean sure = light.dark() || own.isPresent() || cold.isPresent();
        return new FlightEnd(at, new Window(at, light.lightAgain()), reason, sure);
    }

    private static Duration latest(LightEnd light) {
        return earlier(
                NEVER_LATER, Duration.between(light.at(), light.lightAgain()).dividedBy(2));
    }

    private static Duration earlier(Duration one, Duration other) {
        return one.compareTo(other) < 0 ? one : other;
    }

    private static Optional<Duration> usual(
            List<PastEvening> evenings, Function<PastEvening, Optional<Duration>> what, int fewest) {
        double[] minutes = evenings.stream()
                .flatMap(evening -> what.apply(evening).stream())
                .mapToDouble(offset -> offset.toMillis() / 60_000.0)
                .toArray();
        return minutes.length < Math.max(1, fewest)
                ? Optional.empty()
                : Optional.of(Duration.ofMillis(Math.round(Robust.median(minutes) * 60_000)));
    }
}
