package org.duskline.analyzer.watch;

import java.util.Optional;
import java.util.stream.LongStream;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.DayDip;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.finding.Evidence;

/** Asks the scale once a day whether foragers were out, from the first whole day after bees may have come. */
final class ForagerDays implements Cloneable {
    private static final long NIGHT_BEFORE = 10 * 3_600_000L;

    private static final long DAY = 24 * 3_600_000L;

    private long asked = Long.MIN_VALUE;
    private DayDip.Usual usual;

    ForagerDays copy() {
        try {
            return (ForagerDays) clone();
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    /** What the last whole day says of so many kilograms of bees that came at a time; empty when it was asked before. */
    Optional<Evidence> next(long now, long onset, double beesKg, Surroundings surroundings) {
        long noon = surroundings.lastWholeDaysNoon(now);
        if (!surroundings.weighs(Beyond.DAYS_AFTER) || noon <= asked || noon - NIGHT_BEFORE < onset) {
            return Optional.empty();
        }
        asked = noon;
        if (usual == null) {
            usual = usual(noon, surroundings);
        }
        return surroundings.dip(noon).map(dip -> dip.evidence(beesKg, usual));
    }

    /** Of the days before the bees may have come, as far as they are kept. */
    private static DayDip.Usual usual(long firstNoon, Surroundings surroundings) {
        return DayDip.Usual.of(LongStream.rangeClosed(2, 6)
                .mapToObj(days -> surroundings.dip(firstNoon - days * DAY))
                .flatMap(Optional::stream)
                .toArray(DayDip[]::new));
    }
}
