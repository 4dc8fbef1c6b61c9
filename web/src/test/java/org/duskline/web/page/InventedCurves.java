package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.Random;
import java.util.function.Consumer;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.collector.trap.Fitted;

/** Curves of traps that never hung anywhere: the same numbers on every run. */
final class InventedCurves {
    private static final Duration PERIOD = Duration.ofMinutes(2);

    private final Instant now;

    InventedCurves(Instant now) {
        this.now = now;
    }

    /** What happens at an invented trap. */
    enum Story {
        QUIET,
        SCOUTED,
        SWARM,
        ROBBED,
        SILENT_SINCE_MORNING,
        NEVER_HEARD
    }

    void points(String trap, Story story, Fitted fitted, Instant from, Instant until, Consumer<CurvePoint> to) {
        if (story == Story.NEVER_HEARD) {
            return;
        }
        Instant end = until.isBefore(now) ? until : now;
        long step = PERIOD.toMillis();
        long first = Math.floorDiv(from.toEpochMilli() + step - 1, step) * step;
        for (long time = Math.max(first, InventedLine.SEASON.toEpochMilli()); time < end.toEpochMilli(); time += step) {
            Instant instant = Instant.ofEpochMilli(time);
            if (!silent(story, instant)) {
                to.accept(point(new Random(time ^ (long) trap.hashCode() << 20), story, fitted, instant));
            }
        }
    }

    private boolean silent(Story story, Instant time) {
        Duration ago = Duration.between(time, now);
        boolean outOfReach = ago.toHours() >= 20 && ago.toHours() < 22 && story == Story.SWARM;
        return outOfReach || story == Story.SILENT_SINCE_MORNING && ago.toHours() < 9;
    }

    private CurvePoint point(Random random, Story story, Fitted fitted, Instant time) {
        double hour = LocalTime.from(time.atZone(InventedLine.ZONE)).toSecondOfDay() / 3600.0;
        double flight = Math.max(0, Math.sin((hour - 7.5) / 12.5 * Math.PI)) * (hour > 7.5 && hour < 20 ? 1 : 0);
        double outside = 11 + 9 * Math.sin((hour - 9) / 24 * 2 * Math.PI) + random.nextGaussian() * 0.15;
        double rush = story == Story.SWARM ? rush(time) : 0;
        boolean lives = story == Story.SWARM && !time.isBefore(InventedLine.ARRIVAL);
        double in = Math.max(0, flight * usual(story, time) * (0.7 + 0.6 * random.nextDouble())) + rush * 190;
        double out = Math.max(0, flight * usual(story, time) * (0.7 + 0.6 * random.nextDouble())) + rush * 25;
        double weight =
                9.42 + 0.03 * Math.sin(hour / 24 * 2 * Math.PI) + random.nextGaussian() * 0.008 + gained(story, time);
        double box = lives ? outside + 7 - 0.3 * (outside - 15) : outside + 0.6 + 2 * flight;
        return new CurvePoint(
                time.toEpochMilli(),
                fitted.hasCounter() ? 2 : Double.NaN,
                fitted.hasCounter() ? Math.round(in) : Double.NaN,
                fitted.hasCounter() ? Math.round(out) : Double.NaN,
                fitted.hasScale() ? weight : Double.NaN,
                Double.NaN,
                box,
                outside);
    }

    private double usual(Story story, Instant time) {
        double daysToGo = Duration.between(time, InventedLine.ARRIVAL).toMinutes() / 1440.0;
        return switch (story) {
            case SWARM -> daysToGo < 0 ? 34 : daysToGo < 1.2 ? 18 * Math.exp(-daysToGo * 2.2) : 0.9;
            case SCOUTED -> Duration.between(time, now).toHours() < 9 ? 11 : 0.9;
            case ROBBED -> Duration.between(time, now).toHours() < 10 ? 70 : 1.2;
            default -> 0.9;
        };
    }

    private static double rush(Instant time) {
        double minutes = Duration.between(InventedLine.ARRIVAL, time).toSeconds() / 60.0;
        return minutes < 0 || minutes > 40 ? 0 : Math.exp(-Math.pow((minutes - 10) / 9, 2));
    }

    private double gained(Story story, Instant time) {
        double minutes = Duration.between(InventedLine.ARRIVAL, time).toSeconds() / 60.0;
        if (story == Story.SWARM && minutes > 0) {
            return 1.42 * Math.min(1, minutes / 22);
        }
        return story == Story.ROBBED
                ? -0.03 * Math.max(0, 10 - Duration.between(time, now).toMinutes() / 60.0)
                : 0;
    }
}
