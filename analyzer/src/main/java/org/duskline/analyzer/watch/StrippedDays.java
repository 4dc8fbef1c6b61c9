package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.DayLoss;
import org.duskline.analyzer.detect.StrippedDay;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Traffic;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.trap.Fitted;

/** Asks the scale of an empty box each morning whether robbers were there the day before. Part of the fold's state. */
final class StrippedDays implements Cloneable {
    private static final long HOUR = 3_600_000L;

    private List<DayLoss> emptyDays = List.of();
    private long asked = Long.MIN_VALUE;
    private long triedHour = Long.MIN_VALUE;

    StrippedDays copy() {
        try {
            return (StrippedDays) clone();
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    /**
     * The case of the last whole day, once; asked again by the hour while too few of the other scales have been heard of.
     *
     * @param emptySinceMillis since when nobody has lived in the box: the days before are no measure
     */
    Optional<StrippedDay> look(
            TrapSeries series, int at, Fitted fitted, long emptySinceMillis, Surroundings surroundings) {
        long now = series.timeMillis(at);
        if (now / HOUR == triedHour || !asks(surroundings)) {
            return Optional.empty();
        }
        triedHour = now / HOUR;
        long noon = surroundings.lastWholeDaysNoon(now);
        if (noon <= asked || emptySinceMillis > noon - DayLoss.NIGHT_BEFORE) {
            return Optional.empty();
        }
        Optional<DayLoss> day = surroundings.loss(noon);
        if (day.isEmpty()) {
            return Optional.empty();
        }
        asked = noon;
        List<DayLoss> before = emptyDays.stream()
                .filter(each -> each.noonMillis() - DayLoss.NIGHT_BEFORE > emptySinceMillis)
                .toList();
        emptyDays = Stream.concat(before.stream(), day.stream())
                .skip(before.size() < StrippedDay.REMEMBERED_DAYS ? 0 : 1)
                .toList();
        return before.size() < StrippedDay.ENOUGH_DAYS
                ? Optional.empty()
                : Optional.of(StrippedDay.weigh(
                        day.get(),
                        before,
                        fitted.hasCounter() ? Traffic.busiestPerMinute(series, noon) : OptionalDouble.empty(),
                        surroundings.keeperWasThere(noon - DayLoss.NIGHT_BEFORE, noon + DayLoss.NIGHT_AFTER)));
    }

    private static boolean asks(Surroundings surroundings) {
        return surroundings.weighs(Beyond.NEIGHBOURS) && surroundings.weighs(Beyond.DAYS_AFTER);
    }
}
