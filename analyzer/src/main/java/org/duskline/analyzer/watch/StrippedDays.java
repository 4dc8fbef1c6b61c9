package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.DayLoss;
import org.duskline.analyzer.detect.RobbingCase;
import org.duskline.analyzer.detect.StrippedDay;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.trap.Fitted;

/** Asks the scale of an empty box each morning whether robbers were there the day before. Part of the fold's state. */
final class StrippedDays implements Cloneable {
    private static final long HOUR = 3_600_000L;
    private static final long NIGHT_BEFORE = 15 * HOUR;
    private static final long NIGHT_AFTER = 16 * HOUR;

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

    /** Another box, or the same with another's comb: its former days are no measure. */
    void forget() {
        emptyDays = List.of();
    }

    /** The case of the last whole day, once; asked again by the hour while too few of the other scales have been heard of. */
    Optional<RobbingCase> look(
            TrapSeries series, int at, Fitted fitted, long emptySinceMillis, Surroundings surroundings) {
        long now = series.timeMillis(at);
        if (now / HOUR == triedHour || !surroundings.weighs(Beyond.NEIGHBOURS)) {
            return Optional.empty();
        }
        triedHour = now / HOUR;
        long noon = surroundings.lastWholeDaysNoon(now);
        if (noon <= asked || emptySinceMillis > noon - NIGHT_BEFORE) {
            return Optional.empty();
        }
        return surroundings.loss(noon).map(day -> {
            asked = noon;
            OptionalDouble busiest =
                    fitted.hasCounter() ? StrippedDay.busiestPerMinute(series, noon) : OptionalDouble.empty();
            RobbingCase robbers = StrippedDay.weigh(
                    day, emptyDays, busiest, surroundings.keeperWasThere(noon - NIGHT_BEFORE, noon + NIGHT_AFTER));
            emptyDays = Stream.concat(emptyDays.stream(), Stream.of(day))
                    .skip(emptyDays.size() < StrippedDay.REMEMBERED_DAYS ? 0 : 1)
                    .toList();
            return robbers;
        });
    }
}
