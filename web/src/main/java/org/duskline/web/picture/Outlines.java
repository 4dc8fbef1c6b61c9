package org.duskline.web.picture;

import java.awt.geom.Path2D;
import java.util.function.DoubleUnaryOperator;
import java.util.function.LongToDoubleFunction;
import org.duskline.analyzer.curve.Curve;
import org.duskline.analyzer.curve.Quantity;

/** The outlines of a curve on the picture. A gap breaks them. */
final class Outlines {
    private final Curve curve;
    private final LongToDoubleFunction x;

    /** @param x where an instant, in Unix milliseconds, stands from the left */
    Outlines(Curve curve, LongToDoubleFunction x) {
        this.curve = curve;
        this.x = x;
    }

    /** The area between a quantity's peaks and a level. */
    Path2D area(Quantity quantity, double level, DoubleUnaryOperator y) {
        Path2D path = new Path2D.Double();
        boolean drawing = false;
        double last = 0;
        for (int row = 0; row < curve.size(); row++) {
            double value = curve.high(quantity, row);
            if (Double.isNaN(value)) {
                if (drawing) {
                    path.lineTo(last, level);
                }
                drawing = false;
                continue;
            }
            last = x.applyAsDouble(curve.timeMillis(row));
            if (!drawing) {
                path.moveTo(last, level);
            }
            path.lineTo(last, y.applyAsDouble(value));
            drawing = true;
        }
        if (drawing) {
            path.lineTo(last, level);
        }
        return path;
    }

    /** The line of a quantity's means. */
    Path2D line(Quantity quantity, DoubleUnaryOperator y) {
        Path2D path = new Path2D.Double();
        boolean drawing = false;
        for (int row = 0; row < curve.size(); row++) {
            double value = curve.mean(quantity, row);
            if (!Double.isNaN(value)) {
                double at = x.applyAsDouble(curve.timeMillis(row));
                if (drawing) {
                    path.lineTo(at, y.applyAsDouble(value));
                } else {
                    path.moveTo(at, y.applyAsDouble(value));
                }
            }
            drawing = !Double.isNaN(value);
        }
        return path;
    }
}
