package org.duskline.web.deliver;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.duskline.analyzer.sky.Nightfall;
import org.duskline.collector.trap.Trap;

/** Between which hours a trap can be closed, from the sun alone; the evening sheet knows the trap's own flight too. */
final class ClosingHours {
    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private ClosingHours() {}

    /** In words, by the clock of the one who reads. */
    static String words(Trap trap, Instant now, ZoneId reader) {
        LocalDate today = now.atZone(trap.zone()).toLocalDate();
        Nightfall lastNight = at(trap, today.minusDays(1));
        Nightfall night = lastsBeyond(lastNight, now) ? lastNight : at(trap, today);
        if (night instanceof Nightfall.Dark dark) {
            return span(now, dark.dusk(), dark.dawn(), reader);
        }
        if (night instanceof Nightfall.Bright bright) {
            return span(now, bright.sunset(), bright.sunrise(), reader);
        }
        return "when flight has ended; at this latitude the sun does not say when. Watch the entrance";
    }

    private static Nightfall at(Trap trap, LocalDate date) {
        return Nightfall.at(trap.latitude(), trap.longitude(), date, trap.zone());
    }

    private static boolean lastsBeyond(Nightfall night, Instant now) {
        return (night instanceof Nightfall.Dark dark && now.isBefore(dark.dawn()))
                || (night instanceof Nightfall.Bright bright && now.isBefore(bright.sunrise()));
    }

    private static String span(Instant now, Instant from, Instant until, ZoneId reader) {
        String end = HOUR.format(until.atZone(reader));
        return now.isBefore(from)
                ? "from " + HOUR.format(from.atZone(reader)) + " (dusk; wait until no bee flies) to " + end
                : "from now on, once no bee flies, to " + end;
    }
}
