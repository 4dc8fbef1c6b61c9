package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.DayDip;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.finding.Evidence;

/**
 * Asks the scale once a day whether foragers were out: while the box is empty, to learn how it dips without any; once bees
 * may live there, for or against them. Part of the fold's state.
 */
final class ForagerDays implements Cloneable {
    private static final long HOUR = 3_600_000L;
    private static final long HALF_A_DAY = 12 * HOUR;

    /** Below it few fly, so that staying at home says nothing (flight from 12.8 C: Mussen 2010; brisk above 15 C, common practice). */
    private static final double FORAGING_CELSIUS = 15;

    private static final int REMEMBERED_DAYS = 6;

    private record EmptyDay(long noon, double beyondKg) {}

    private List<EmptyDay> emptyDays = List.of();
    private long asked = Long.MIN_VALUE;
    private long triedHour = Long.MIN_VALUE;

    ForagerDays copy() {
        try {
            return (ForagerDays) clone();
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    /** Remembers how the empty box dipped. */
    void learn(long now, Surroundings surroundings) {
        next(now, surroundings)
                .ifPresent(dip ->
                        emptyDays = Stream.concat(emptyDays.stream(), Stream.of(new EmptyDay(asked, dip.beyondKg())))
                                .skip(emptyDays.size() < REMEMBERED_DAYS ? 0 : 1)
                                .toList());
    }

    /** What the last whole day says of so many kilograms of bees that came at a time; empty when it was asked before. */
    Optional<Evidence> evidence(long now, long onset, double beesKg, Surroundings surroundings) {
        Optional<DayDip> dip = next(now, surroundings);
        if (asked - HALF_A_DAY < onset || surroundings.keeperShut(asked)) {
            return Optional.empty();
        }
        boolean fair = surroundings.outsideCelsius(asked) >= FORAGING_CELSIUS;
        return dip.map(each -> each.evidence(beesKg, usualBefore(onset))).filter(each -> fair || each.logOdds() > 0);
    }

    private DayDip.Usual usualBefore(long onset) {
        return DayDip.Usual.of(emptyDays.stream()
                .filter(day -> day.noon() + HALF_A_DAY < onset)
                .mapToDouble(EmptyDay::beyondKg)
                .toArray());
    }

    /** The last whole day's dip, once; asked again by the hour while too few of the other scales have been heard of. */
    private Optional<DayDip> next(long now, Surroundings surroundings) {
        if (now / HOUR == triedHour || !surroundings.weighs(Beyond.DAYS_AFTER)) {
            return Optional.empty();
        }
        triedHour = now / HOUR;
        long noon = surroundings.lastWholeDaysNoon(now);
        Optional<DayDip> dip = noon > asked ? surroundings.dip(noon) : Optional.empty();
        asked = dip.isPresent() ? noon : asked;
        return dip;
    }
}
