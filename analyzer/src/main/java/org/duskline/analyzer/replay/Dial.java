package org.duskline.analyzer.replay;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.detect.Thresholds;

/**
 * A threshold as a keeper turns it: in the trade's units, in steps that make a difference, from the most wakeful to the
 * most patient.
 */
public enum Dial {
    SWARM_KG(
            "smallestSwarmKg",
            "Smallest swarm worth a drive",
            "%.2f kg",
            "Lower tells casts too, and more rain and hands.",
            0.1,
            0.15,
            0.2,
            0.25,
            0.3,
            0.4,
            0.5,
            0.6,
            0.8,
            1.0),
    MOVE_IN_ODDS(
            "moveInOdds",
            "How sure before a move-in is told",
            "%.0f to 1",
            "Higher waits some minutes longer and errs less.",
            3,
            5,
            10,
            20,
            40,
            80,
            160,
            400,
            1000),
    SCOUTS(
            "scoutsPerMinute",
            "Crossings that count as scouts",
            "%.1f a minute",
            "Lower sees the first scouts, and more passers-by.",
            0.4,
            0.6,
            0.8,
            1.0,
            1.2,
            1.5,
            2,
            3,
            5),
    FLIGHT_CELSIUS(
            "flightCelsius",
            "Too cold for bees to fly below",
            "%.0f °C",
            "Lower believes in flight on colder days.",
            7,
            8,
            9,
            10,
            11,
            12,
            13,
            14),
    ROBBERS(
            "robbersPerMinute",
            "Crossings that count as robbers",
            "%.0f a minute",
            "Lower tells robbing sooner, and takes busy scouts for it.",
            1,
            2,
            3,
            4,
            6,
            10);

    private final String key;
    private final String label;
    private final String form;
    private final String effect;
    private final double[] stops;

    Dial(String key, String label, String form, String effect, double... stops) {
        this.key = key;
        this.label = label;
        this.form = form;
        this.effect = effect;
        this.stops = stops;
    }

    /** The threshold's name in files and at the API. */
    public String key() {
        return key;
    }

    public String label() {
        return label;
    }

    /** What turning it does, in one line. */
    public String effect() {
        return effect;
    }

    public List<Double> stops() {
        return Arrays.stream(stops).boxed().toList();
    }

    /** The stop that lies nearest to a value. */
    public int stopFor(double value) {
        int nearest = 0;
        for (int i = 1; i < stops.length; i++) {
            nearest = Math.abs(stops[i] - value) < Math.abs(stops[nearest] - value) ? i : nearest;
        }
        return nearest;
    }

    public double of(Thresholds thresholds) {
        return switch (this) {
            case SWARM_KG -> thresholds.smallestSwarmKg();
            case MOVE_IN_ODDS -> thresholds.moveInOdds();
            case SCOUTS -> thresholds.scoutsPerMinute();
            case FLIGHT_CELSIUS -> thresholds.flightCelsius();
            case ROBBERS -> thresholds.robbersPerMinute();
        };
    }

    /** The same thresholds with this one turned. */
    public Thresholds turned(Thresholds thresholds, double value) {
        return ThresholdText.with(thresholds, key, value);
    }

    /** A value with its unit: {@code 0.25 kg}. */
    public String said(double value) {
        return String.format(Locale.ROOT, form, value);
    }

    static Optional<Dial> ofKey(String key) {
        return Arrays.stream(values()).filter(dial -> dial.key.equals(key)).findFirst();
    }
}
