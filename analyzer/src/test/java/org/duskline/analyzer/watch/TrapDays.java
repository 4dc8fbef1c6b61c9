package org.duskline.analyzer.watch;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/**
 * Invented days at one trap, told as a beekeeper would: quiet, then scouts, a swarm, rain, hands. Weather and sizes are
 * common practice of the trade; the noise comes from a seed.
 */
final class TrapDays {
    static final Trap TRAP = new Trap("Alder Bend", 47.0, 8.0, ZoneId.of("UTC"));
    static final Instant START = Instant.parse("2031-05-20T00:00:00Z");

    private static final double GRAMS_PER_BEE = 0.13;

    private final Random random;
    private final Duration period;
    private final List<Sample> samples = new ArrayList<>();
    private Instant now = START;
    private double in;
    private double out;
    private double weightKg = 6.2;
    private double crossingsPerMinute;
    private double boxAboveCelsius = Double.NaN;
    private double lossKgPerHour;
    private boolean gusty;
    private boolean scaleDead;

    TrapDays(long seed, Duration period) {
        this.random = new Random(seed);
        this.period = period;
    }

    List<Sample> samples() {
        return List.copyOf(samples);
    }

    Instant now() {
        return now;
    }

    /** Nothing but noise, and whatever scouts are about. */
    TrapDays until(String time) {
        Instant end = Instant.parse("2031-05-" + time + ":00Z");
        while (now.isBefore(end)) {
            double bees = crossingsPerMinute * period.toSeconds() / 60.0 / 2 * (gusty ? gust() : 1);
            step(-lossKgPerHour * period.toSeconds() / 3_600.0, bees, bees, 0.004);
        }
        return this;
    }

    /** From now on scouts or foragers cross so often a minute, as many in as out. */
    TrapDays crossings(double perMinute) {
        crossingsPerMinute = perMinute;
        return this;
    }

    /** From now on what moves before the beams swings in gusts, as a web does. */
    TrapDays inGusts() {
        gusty = true;
        return this;
    }

    private double gust() {
        return -Math.log(1 - random.nextDouble());
    }

    /** From now on the box gets lighter, as one whose old honey is carried off. */
    TrapDays losing(double kgPerHour) {
        lossKgPerHour = kgPerHour;
        return this;
    }

    /** From now on the scale says nothing. */
    TrapDays scaleDies() {
        scaleDead = true;
        return this;
    }

    /** What was measured in that time is lost. */
    TrapDays silent(String from, String until) {
        Instant start = Instant.parse("2031-05-" + from + ":00Z");
        Instant end = Instant.parse("2031-05-" + until + ":00Z");
        samples.removeIf(sample -> sample.time().isAfter(start) && sample.time().isBefore(end));
        return this;
    }

    /** From now on the box has a thermometer, and is so much warmer than the shade. */
    TrapDays boxAbove(double celsius) {
        boxAboveCelsius = celsius;
        return this;
    }

    /** A swarm enters: weight on a ramp, bees at the entrance of which the counter sees a part. */
    TrapDays swarm(double kg, Duration entering) {
        double minutes = entering.toSeconds() / 60.0;
        double perStep = period.toSeconds() / 60.0 / minutes;
        for (double done = 0; done < 1; done += perStep) {
            double bees = 1000 * kg * perStep / GRAMS_PER_BEE;
            step(kg * perStep, 0.55 * bees, 0.15 * bees, 0.006);
        }
        return this;
    }

    /** The colony leaves again as it came. */
    TrapDays leave(double kg, Duration leaving) {
        double perStep = period.toSeconds() / 60.0 / (leaving.toSeconds() / 60.0);
        for (double done = 0; done < 1; done += perStep) {
            double bees = 1000 * kg * perStep / GRAMS_PER_BEE;
            step(-kg * perStep, 0.1 * bees, 0.55 * bees, 0.006);
        }
        return this;
    }

    /** Water soaks in, fast at first. */
    TrapDays rain(double kg, Duration falling) {
        int steps = (int) (falling.toSeconds() / period.toSeconds());
        for (int i = 0; i < steps; i++) {
            step(kg * 2.0 * (steps - i) / (steps * (steps + 1.0)), 0, 0, 0.005);
        }
        return this;
    }

    /** The zero point moves in one sample. */
    TrapDays jump(double kg) {
        weightKg += kg;
        return this;
    }

    /** A keeper lifts, sets down, opens. */
    TrapDays hands(Duration busy) {
        double before = weightKg;
        for (int i = 0; i < busy.toSeconds() / period.toSeconds(); i++) {
            weightKg = before + (random.nextDouble() - 0.6) * 5;
            step(0, 2, 2, 0.05);
        }
        weightKg = before + 0.03;
        return this;
    }

    private void step(double gainKg, double beesIn, double beesOut, double noiseKg) {
        weightKg += gainKg;
        in += poisson(beesIn);
        out += poisson(beesOut);
        now = now.plus(period);
        double weight = scaleDead ? Double.NaN : weightKg + noiseKg * random.nextGaussian();
        samples.add(sample(now, in, out, weight, boxAboveCelsius));
    }

    private double poisson(double mean) {
        double left = Math.exp(-Math.min(mean, 500));
        int count = 0;
        for (double product = random.nextDouble(); product > left; product *= random.nextDouble()) {
            count++;
        }
        return count;
    }

    static Sample sample(Instant time, double in, double out, double weightKg) {
        return sample(time, in, out, weightKg, Double.NaN);
    }

    private static Sample sample(Instant time, double in, double out, double weightKg, double boxAboveCelsius) {
        double hour = (time.getEpochSecond() % 86_400) / 3_600.0;
        double celsius = 17 - 6 * Math.cos((hour - 3) / 24 * 2 * Math.PI);
        long millis = time.toEpochMilli();
        return new Sample(
                millis,
                millis,
                in,
                out,
                weightKg,
                Double.NaN,
                Double.NaN,
                celsius,
                celsius + boxAboveCelsius,
                Double.NaN,
                4.0,
                -1,
                -1,
                0);
    }
}
