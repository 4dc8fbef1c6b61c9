package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.duskline.collector.wire.Sample;

/** What to tell somebody who stands at the trap with a closure in hand. */
public sealed interface AtTheTrap {
    /** Bees are still out: so many pass a minute. */
    record StillFlying(double perMinute) implements AtTheTrap {}

    /** Flight is over, and what still passes now and then are stragglers and the guards at the door: close now. */
    record Stragglers(double perMinute) implements AtTheTrap {}

    /** No bee has passed for so long; close now where it is long enough. */
    record Quiet(Duration quiet, boolean closeNow) implements AtTheTrap {}

    /** No counter to go by: whether flight should be over by sun and temperature. */
    record ByTheLight(boolean over, String reason) implements AtTheTrap {}

    /** The node has not been heard for so long; go by the light and by looking. */
    record Unheard(Duration silent, boolean over) implements AtTheTrap {}

    /** Without a bee for this long by daylight's end, a trap may be closed; our choice within common practice. */
    Duration QUIET_ENOUGH = Duration.ofMinutes(10);

    /**
     * After flight's end fewer crossings a minute than this are stragglers and guards, who go in and out of a settled
     * nest all night; our choice within common practice.
     */
    double STRAGGLING_PER_MINUTE = 1;

    /** The stretch over which flight is counted. */
    Duration COUNTED_OVER = Duration.ofMinutes(10);

    /** A node silent for longer says nothing about now. */
    Duration TOO_OLD = Duration.ofMinutes(30);

    /**
     * Judges the entrance now.
     *
     * @param samples of the last hours, in time order
     * @param now the moment
     * @param tonight the trap's flight end
     */
    static AtTheTrap now(List<Sample> samples, Instant now, FlightEnd tonight) {
        if (samples.isEmpty()) {
            return new ByTheLight(over(now, tonight, Double.NaN), tonight.reason());
        }
        Sample latest = samples.get(samples.size() - 1);
        boolean over = over(now, tonight, latest.cellCelsius());
        Duration silent = Duration.between(latest.time(), now);
        if (silent.compareTo(TOO_OLD) > 0) {
            return new Unheard(silent, over);
        }
        if (Double.isNaN(latest.in()) || Double.isNaN(latest.out())) {
            boolean cold = latest.cellCelsius() < FlightEnd.FLOOR_CELSIUS;
            return new ByTheLight(over, cold ? "too cold to fly" : tonight.reason());
        }
        Instant lastBee = lastBee(samples);
        Duration quiet = Duration.between(lastBee, latest.time());
        if (quiet.compareTo(COUNTED_OVER) < 0) {
            double perMinute = perMinute(samples, latest);
            boolean straggling = over && perMinute < STRAGGLING_PER_MINUTE;
            return straggling ? new Stragglers(perMinute) : new StillFlying(perMinute);
        }
        return new Quiet(quiet, quiet.compareTo(QUIET_ENOUGH) >= 0 && over);
    }

    private static boolean over(Instant now, FlightEnd tonight, double celsius) {
        return tonight.window().contains(now) || celsius < FlightEnd.FLOOR_CELSIUS;
    }

    private static Instant lastBee(List<Sample> samples) {
        for (int i = samples.size() - 1; i > 0; i--) {
            double crossings = Traffic.crossings(samples.get(i - 1), samples.get(i));
            if (Double.isNaN(crossings) || crossings > 0) {
                return samples.get(i).time();
            }
        }
        return samples.get(0).time();
    }

    /** Steps over which the counter restarted say nothing and are left out, with their time. */
    private static double perMinute(List<Sample> samples, Sample latest) {
        double crossings = 0;
        double minutes = 0;
        for (int i = samples.size() - 1; i > 0; i--) {
            Sample before = samples.get(i - 1);
            boolean enough = Duration.between(before.time(), latest.time()).compareTo(COUNTED_OVER) > 0;
            if (enough && minutes > 0) {
                break;
            }
            double step = Traffic.crossings(before, samples.get(i));
            if (!Double.isNaN(step)) {
                crossings += step;
                minutes +=
                        Duration.between(before.time(), samples.get(i).time()).toMillis() / 60_000.0;
            }
        }
        return minutes > 0 ? crossings / minutes : 0;
    }
}
