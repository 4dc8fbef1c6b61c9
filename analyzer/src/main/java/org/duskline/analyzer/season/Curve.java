package org.duskline.analyzer.season;

import java.util.function.DoubleUnaryOperator;

/** A quantity of the season on a ten-minute grid, read in between by straight lines. */
final class Curve {
    static final double STEP = 600;

    private final double origin;
    private final float[] values;

    private Curve(double origin, float[] values) {
        this.origin = origin;
        this.values = values;
    }

    /** A curve over a span of seconds, filled by a function of time in order, so that the function may remember. */
    static Curve fill(double origin, double end, DoubleUnaryOperator of) {
        float[] values = new float[(int) Math.ceil((end - origin) / STEP) + 2];
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) of.applyAsDouble(origin + i * STEP);
        }
        return new Curve(origin, values);
    }

    double at(double time) {
        double place = (time - origin) / STEP;
        if (place <= 0) {
            return values[0];
        }
        int before = (int) place;
        if (before >= values.length - 1) {
            return values[values.length - 1];
        }
        double share = place - before;
        return values[before] * (1 - share) + values[before + 1] * share;
    }
}
