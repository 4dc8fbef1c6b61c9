package org.duskline.web.page;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.function.Consumer;
import org.duskline.analyzer.curve.CurvePoint;

/** A curve as comma-separated values (RFC 4180), every point, units in the header (names of RFC 8428). */
final class CurveCsv implements Consumer<CurvePoint> {
    private static final String LINE_END = "\r\n";

    private final StringBuilder text = new StringBuilder(
            "time,counted over [min],in [1/min],out [1/min],weight [kg],weight at one temperature [kg],box [Cel],cell [Cel]"
                    + LINE_END);

    @Override
    public void accept(CurvePoint point) {
        text.append(Instant.ofEpochMilli(point.timeMillis()));
        for (double value : new double[] {
            point.minutes(),
            point.inPerMinute(),
            point.outPerMinute(),
            point.weightKg(),
            point.evenedKg(),
            point.boxCelsius(),
            point.cellCelsius()
        }) {
            text.append(',').append(Double.isNaN(value) ? "" : plain(value));
        }
        text.append(LINE_END);
    }

    String text() {
        return text.toString();
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value)
                .setScale(4, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
