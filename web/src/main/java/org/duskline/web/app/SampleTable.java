package org.duskline.web.app;

import java.io.PrintStream;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.duskline.collector.wire.Mark;
import org.duskline.collector.wire.Sample;

/** Samples as comma-separated values (RFC 4180); quantities and units as SenML writes them (RFC 8428, section 12.1). */
final class SampleTable {
    private static final String HEADING =
            "time (UTC),received (UTC),node,in (count),out (count),weight (kg),load (count),"
                    + "weight-sd (kg),cell (Cel),box (Cel),rh (%RH),battery (V),boot (count),seq (count),marks";
    private static final String LINE_END = "\r\n";

    private final PrintStream out;

    SampleTable(PrintStream out) {
        this.out = out;
    }

    void heading() {
        out.print(HEADING + LINE_END);
    }

    void row(String node, Sample sample) {
        out.print(String.join(
                        ",",
                        sample.time().toString(),
                        sample.received().toString(),
                        node,
                        number(sample.in()),
                        number(sample.out()),
                        number(sample.weightKg()),
                        number(sample.loadCount()),
                        number(sample.weightSdKg()),
                        number(sample.cellCelsius()),
                        number(sample.boxCelsius()),
                        number(sample.humidityPercent()),
                        number(sample.batteryVolts()),
                        counted(sample.boot()),
                        counted(sample.seq()),
                        marks(sample))
                + LINE_END);
    }

    private static String number(double value) {
        return Double.isNaN(value)
                ? ""
                : BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }

    private static String counted(long value) {
        return value < 0 ? "" : Long.toString(value);
    }

    private static String marks(Sample sample) {
        return Arrays.stream(Mark.values())
                .filter(sample::marked)
                .map(mark -> mark.name().toLowerCase(Locale.ROOT).replace('_', '-'))
                .collect(Collectors.joining(" "));
    }
}
