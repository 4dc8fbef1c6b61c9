package org.duskline.web.page;

import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.duskline.analyzer.curve.Curve;
import org.duskline.analyzer.curve.Quantity;
import org.duskline.web.page.board.Night;

/**
 * Writes a curve as compact JSON: columns of numbers, the times in seconds counted from the one before, so that a
 * season stays small on a phone's connection. Written by hand since it is the one large answer.
 */
final class CurveJson {
    private final StringBuilder json = new StringBuilder(64 * 1024);
    private final Curve curve;

    private CurveJson(Curve curve) {
        this.curve = curve;
    }

    static String write(Curve curve, List<Night> nights) {
        return new CurveJson(curve).write(nights);
    }

    private String write(List<Night> nights) {
        json.append("{\"from\":\"")
                .append(curve.from())
                .append("\",\"until\":\"")
                .append(curve.until());
        json.append("\",\"points\":").append(curve.points()).append(",\"nights\":[");
        for (int night = 0; night < nights.size(); night++) {
            json.append(night == 0 ? "[" : ",[")
                    .append(nights.get(night).dusk().getEpochSecond())
                    .append(',')
                    .append(nights.get(night).dawn().getEpochSecond())
                    .append(']');
        }
        json.append(']');
        times();
        if (curve.has(Quantity.IN_PER_MINUTE)) {
            traffic("in", Quantity.IN_PER_MINUTE);
        }
        if (curve.has(Quantity.OUT_PER_MINUTE)) {
            traffic("out", Quantity.OUT_PER_MINUTE);
        }
        if (curve.has(Quantity.WEIGHT_KG)) {
            level("weight", Quantity.WEIGHT_KG, 3);
        }
        if (curve.has(Quantity.EVENED_KG)) {
            level("evened", Quantity.EVENED_KG, 3);
        }
        if (curve.has(Quantity.BOX_CELSIUS)) {
            level("box", Quantity.BOX_CELSIUS, 1);
        }
        if (curve.has(Quantity.CELL_CELSIUS)) {
            level("cell", Quantity.CELL_CELSIUS, 1);
        }
        return json.append('}').toString();
    }

    private void times() {
        json.append(",\"start\":").append(curve.size() == 0 ? 0 : curve.timeMillis(0) / 1000);
        json.append(",\"step\":[");
        long previous = curve.size() == 0 ? 0 : curve.timeMillis(0) / 1000;
        for (int row = 0; row < curve.size(); row++) {
            long seconds = curve.timeMillis(row) / 1000;
            json.append(row == 0 ? "" : ",").append(seconds - previous);
            previous = seconds;
        }
        json.append(']');
    }

    /** Traffic tells its peak and its mean, so that a season's view doesn't look busier than the days were. */
    private void traffic(String name, Quantity quantity) {
        begin(name, quantity);
        column("high", row -> curve.high(quantity, row), 1);
        if (thinned()) {
            json.append(',');
            column("mean", row -> curve.mean(quantity, row), 1);
        }
        json.append('}');
    }

    private void level(String name, Quantity quantity, int decimals) {
        begin(name, quantity);
        column("high", row -> curve.high(quantity, row), decimals);
        if (thinned()) {
            json.append(',');
            column("low", row -> curve.low(quantity, row), decimals);
        }
        json.append('}');
    }

    private boolean thinned() {
        return curve.points() > curve.size();
    }

    private void begin(String name, Quantity quantity) {
        json.append(",\"")
                .append(name)
                .append("\":{\"unit\":\"")
                .append(quantity.unit())
                .append("\",");
    }

    private void column(String name, IntToDoubleFunction value, int decimals) {
        json.append('"').append(name).append("\":[");
        for (int row = 0; row < curve.size(); row++) {
            json.append(row == 0 ? "" : ",");
            number(value.applyAsDouble(row), decimals);
        }
        json.append(']');
    }

    private void number(double value, int decimals) {
        if (Double.isNaN(value)) {
            json.append("null");
            return;
        }
        long scale = decimals == 3 ? 1000 : 10;
        long rounded = Math.round(value * scale);
        json.append(rounded < 0 ? "-" : "").append(Math.abs(rounded) / scale);
        long rest = Math.abs(rounded) % scale;
        if (rest != 0) {
            json.append('.').append(Long.toString(scale + rest).substring(1));
        }
    }
}
