package org.duskline.analyzer.watch;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.analyzer.stats.Robust;
import org.duskline.collector.trap.Fitted;

/**
 * What follows an alarm and speaks for or against it: scouts elsewhere fall silent, the weight stays past dusk, the box
 * holds warm through the night, foragers fly next morning. Evidence in nats, each piece once; part of the fold's state.
 */
final class Aftermath implements Cloneable {
    private static final long HOUR = 3_600_000L;

    /** A cluster warms its box by several degrees through a night; an empty one follows the shade (common practice). */
    private static final double WARM_CELSIUS = 2.8;

    private static final double COLD_CELSIUS = 1.6;

    private double usualExcess = 0.5;
    private boolean knowsUsual;
    private long nightLookedAt;
    private boolean silenceAsked;
    private boolean duskAsked;
    private boolean morningAsked;

    Aftermath copy() {
        try {
            return (Aftermath) clone();
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    /**
     * A new alarm: everything is asked anew, the box's usual warmth is kept.
     *
     * @param late whether it was told for having stayed some days, so that its first hours say no more
     */
    void begin(boolean late) {
        silenceAsked = late;
        duskAsked = late;
        morningAsked = false;
    }

    /** Learns how warm the empty box is at night beside the shade: thermometers differ, and boxes store heat. */
    void learn(TrapSeries series, int at, Surroundings surroundings) {
        double excess = nightExcess(series, at, surroundings);
        if (!Double.isNaN(excess)) {
            usualExcess = knowsUsual ? usualExcess + 0.3 * (excess - usualExcess) : excess;
            knowsUsual = true;
        }
    }

    /** The next piece of evidence after an alarm, if a sample brings one. */
    Optional<Evidence> look(
            TrapSeries series, int at, long onset, Fitted fitted, boolean stillThere, Surroundings surroundings) {
        long now = series.timeMillis(at);
        if (surroundings.weighs(Beyond.SILENCE) && !silenceAsked && now - onset > 2 * HOUR) {
            silenceAsked = true;
            Optional<Evidence> silence = silence(surroundings.scoutsSilenced(onset, now));
            if (silence.isPresent()) {
                return silence;
            }
        }
        if (surroundings.weighs(Beyond.DAYS_AFTER)
                && !duskAsked
                && now - onset > HOUR
                && surroundings.hoursBeforeSunset(now) < -0.5) {
            duskAsked = true;
            return stillThere ? Optional.of(new Evidence("It stayed past dusk", 3)) : Optional.empty();
        }
        double excess = nightExcess(series, at, surroundings);
        if (surroundings.weighs(Beyond.WARMTH) && !Double.isNaN(excess)) {
            return warmth(excess - usualExcess);
        }
        if (fitted.hasCounter() && duskAsked && !morningAsked) {
            return morning(series, at, surroundings);
        }
        return Optional.empty();
    }

    private static Optional<Evidence> silence(double silenced) {
        if (Double.isNaN(silenced)) {
            return Optional.empty();
        }
        return Optional.of(
                silenced >= 0.5
                        ? new Evidence("Scouts at other traps fell silent when it came", 1.2)
                        : new Evidence("Scouts at other traps went on as before", -0.4));
    }

    private static Optional<Evidence> warmth(double excess) {
        if (excess > COLD_CELSIUS && excess < WARM_CELSIUS) {
            return Optional.empty();
        }
        String words = excess >= WARM_CELSIUS
                ? "The box held %.1f C above its empty nights until morning: bees keep it warm"
                : "The box was as cold as on its empty nights (%+.1f C)";
        return Optional.of(new Evidence(String.format(Locale.ROOT, words, excess), excess >= WARM_CELSIUS ? 5 : -5));
    }

    private Optional<Evidence> morning(TrapSeries series, int at, Surroundings surroundings) {
        long now = series.timeMillis(at);
        int before = series.lastAt(now - HOUR);
        double sun = surroundings.hoursAfterSunrise(now);
        boolean fit = sun > 3 && surroundings.hoursBeforeSunset(now) > 3 && surroundings.outsideCelsius(now) > 15;
        if (!fit || before < 0 || now - series.timeMillis(before) > 2 * HOUR) {
            return Optional.empty();
        }
        morningAsked = true;
        double minutes = (now - series.timeMillis(before)) / 60_000.0;
        double crossings = series.totalIn(at) + series.totalOut(at) - series.totalIn(before) - series.totalOut(before);
        double perMinute = crossings / minutes;
        return perMinute > 4
                ? Optional.of(new Evidence(String.format(Locale.ROOT, "Foragers fly, %.0f a minute", perMinute), 2))
                : Optional.empty();
    }

    /** Once a night, an hour and more before sunrise: how warm the box was beside the shade; NaN at all other times. */
    private double nightExcess(TrapSeries series, int at, Surroundings surroundings) {
        long now = series.timeMillis(at);
        double sun = surroundings.hoursAfterSunrise(now);
        if (sun < -1.5 || sun > -0.5 || now - nightLookedAt < 12 * HOUR) {
            return Double.NaN;
        }
        nightLookedAt = now;
        return Robust.median(IntStream.of(3, 2, 1)
                .mapToDouble(hours -> excess(series, now - hours * HOUR, surroundings))
                .filter(excess -> !Double.isNaN(excess))
                .toArray());
    }

    private static double excess(TrapSeries series, long time, Surroundings surroundings) {
        int at = series.lastAt(time);
        if (at < 0 || time - series.timeMillis(at) > HOUR) {
            return Double.NaN;
        }
        return series.value(Quantity.BOX, at) - surroundings.shadeCelsius(time);
    }
}
