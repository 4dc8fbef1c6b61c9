package org.duskline.web.page;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.duskline.analyzer.curve.Curve;
import org.duskline.analyzer.curve.Quantity;
import org.duskline.analyzer.finding.Finding;
import org.duskline.web.page.board.Night;

/**
 * A trap's small curve: traffic inward above the line, outward below it, the weight across. Drawn on a field of 1000 by
 * 1000. Traffic stands on a square-root scale shared by all strips, so that a few scouts are seen beside a rush.
 *
 * @param in outline of the traffic inward
 * @param out outline of the traffic outward
 * @param weight the weight's line
 * @param nights where it was dark
 * @param onset where the finding began; empty when outside the strip
 * @param words the same for those who can't see it
 */
public record Strip(String in, String out, String weight, List<Shade> nights, Optional<String> onset, String words) {
    private static final double WIDTH = 1000;
    private static final double MIDDLE = 500;
    private static final double REACH = 460;
    private static final double FULL_TRAFFIC_PER_MINUTE = 500;
    private static final double LEAST_WEIGHT_RANGE_KG = 2;

    /** Where there is nothing to draw. */
    static final Strip NONE = new Strip("", "", "", List.of(), Optional.empty(), "");

    static Strip draw(Curve curve, List<Night> nights, Optional<Finding> finding, ZoneId zone) {
        TimeScale scale = new TimeScale(curve.from(), curve.until());
        return new Strip(
                traffic(curve, scale, Quantity.IN_PER_MINUTE, -1),
                traffic(curve, scale, Quantity.OUT_PER_MINUTE, 1),
                weight(curve, scale),
                scale.shades(nights),
                finding.map(Finding::onset).filter(scale::covers).map(scale::at),
                words(curve, zone));
    }

    public boolean isEmpty() {
        return in.isEmpty() && out.isEmpty() && weight.isEmpty();
    }

    private static String traffic(Curve curve, TimeScale scale, Quantity quantity, int direction) {
        StringBuilder path = new StringBuilder();
        boolean drawing = false;
        double x = 0;
        for (int row = 0; row < curve.size(); row++) {
            double value = curve.high(quantity, row);
            if (Double.isNaN(value)) {
                drawing = close(path, drawing, x);
                continue;
            }
            x = x(scale, curve.timeMillis(row));
            if (!drawing) {
                point(path, 'M', x, MIDDLE);
                drawing = true;
            }
            double height = Math.min(1, Math.sqrt(value / FULL_TRAFFIC_PER_MINUTE)) * REACH;
            point(path, 'L', x, MIDDLE + direction * height);
        }
        close(path, drawing, x);
        return path.toString();
    }

    private static boolean close(StringBuilder path, boolean drawing, double x) {
        if (drawing) {
            point(path, 'L', x, MIDDLE);
            path.append('Z');
        }
        return false;
    }

    private static String weight(Curve curve, TimeScale scale) {
        double lowest = curve.lowest(Quantity.WEIGHT_KG);
        double range = Math.max(LEAST_WEIGHT_RANGE_KG, (curve.highest(Quantity.WEIGHT_KG) - lowest) * 1.1);
        ToDoubleFunction<Double> y = weight -> 920 - (weight - lowest) / range * 840;
        StringBuilder path = new StringBuilder();
        boolean drawing = false;
        for (int row = 0; row < curve.size(); row++) {
            double value = curve.mean(Quantity.WEIGHT_KG, row);
            if (!Double.isNaN(value)) {
                point(path, drawing ? 'L' : 'M', x(scale, curve.timeMillis(row)), y.applyAsDouble(value));
            }
            drawing = !Double.isNaN(value);
        }
        return path.toString();
    }

    private static String words(Curve curve, ZoneId zone) {
        if (curve.points() == 0) {
            return "No samples in this stretch.";
        }
        StringBuilder words = new StringBuilder();
        if (curve.has(Quantity.IN_PER_MINUTE)) {
            double most = curve.highest(Quantity.IN_PER_MINUTE);
            words.append("Most traffic inward ").append(Words.perMinute(most)).append(" a minute");
            if (most > 0) {
                words.append(" at ").append(Words.clock(timeOf(curve, most), zone));
            }
            words.append(". ");
        }
        if (curve.has(Quantity.WEIGHT_KG)) {
            words.append("Weight ")
                    .append(Words.kg(curve.lowest(Quantity.WEIGHT_KG)))
                    .append(" to ")
                    .append(Words.kg(curve.highest(Quantity.WEIGHT_KG)))
                    .append(" kg.");
        }
        return words.toString().strip();
    }

    private static Instant timeOf(Curve curve, double inPerMinute) {
        int row = 0;
        while (curve.high(Quantity.IN_PER_MINUTE, row) != inPerMinute) {
            row++;
        }
        return Instant.ofEpochMilli(curve.timeMillis(row));
    }

    private static double x(TimeScale scale, long timeMillis) {
        return scale.percent(Instant.ofEpochMilli(timeMillis)) / 100 * WIDTH;
    }

    private static void point(StringBuilder path, char command, double x, double y) {
        path.append(command).append(Math.round(x)).append(' ').append(Math.round(y));
    }
}
