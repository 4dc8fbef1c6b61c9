package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.duskline.collector.wire.Sample;

/** A stretch of samples told as a story: what flies, weighs and warms, and for how long. */
public final class SampleStream {
    private static final Duration RADIO = Duration.ofSeconds(2);

    private final List<Sample> samples = new ArrayList<>();
    private final Duration period;
    private Instant now;
    private double in = 100;
    private double out = 100;
    private double perMinute = Double.NaN;
    private double weight = Double.NaN;
    private double cell = Double.NaN;
    private double box = Double.NaN;
    private double battery = Double.NaN;
    private double boxPerMinute;

    private SampleStream(Instant start, Duration period) {
        this.now = start;
        this.period = period;
    }

    public static SampleStream from(String start, Duration period) {
        return new SampleStream(Instant.parse(start), period);
    }

    /** So many crossings a minute, half of them inward. */
    public SampleStream flying(double crossingsPerMinute) {
        perMinute = crossingsPerMinute;
        return this;
    }

    public SampleStream weighing(double kg) {
        weight = kg;
        return this;
    }

    public SampleStream outside(double celsius) {
        cell = celsius;
        return this;
    }

    public SampleStream inside(double celsius) {
        box = celsius;
        boxPerMinute = 0;
        return this;
    }

    public SampleStream warmingInside(double celsiusPerMinute) {
        boxPerMinute = celsiusPerMinute;
        return this;
    }

    public SampleStream battery(double volts) {
        battery = volts;
        return this;
    }

    public SampleStream restarting() {
        in = 0;
        out = 0;
        return this;
    }

    /** Silence: time passes without a sample. */
    public SampleStream silent(Duration length) {
        now = now.plus(length);
        return this;
    }

    public SampleStream lasting(Duration length) {
        Instant end = now.plus(length);
        while (now.isBefore(end)) {
            double minutes = period.toSeconds() / 60.0;
            if (!Double.isNaN(perMinute)) {
                in += perMinute * minutes / 2;
                out += perMinute * minutes / 2;
            }
            box += boxPerMinute * minutes;
            samples.add(sample());
            now = now.plus(period);
        }
        return this;
    }

    public List<Sample> samples() {
        return List.copyOf(samples);
    }

    public Instant end() {
        return samples.get(samples.size() - 1).time();
    }

    private Sample sample() {
        double none = Double.NaN;
        boolean counted = !Double.isNaN(perMinute);
        return new Sample(
                now.toEpochMilli(),
                now.plus(RADIO).toEpochMilli(),
                counted ? Math.floor(in) : none,
                counted ? Math.floor(out) : none,
                weight,
                none,
                none,
                cell,
                box,
                none,
                battery,
                -1,
                -1,
                0);
    }
}
