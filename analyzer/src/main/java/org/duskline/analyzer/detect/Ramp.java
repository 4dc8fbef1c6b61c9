package org.duskline.analyzer.detect;

import java.util.Arrays;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/**
 * What the scale says about a gain up to one moment. The onset is found as in a one-sided CUSUM (Page 1954) of the
 * weight's steps after a running median of three, which takes single wild values out.
 *
 * @param known whether there are enough weights to say anything
 * @param onsetMillis when the gain began
 * @param minutes how long ago that was
 * @param baseKg the level before
 * @param gainKg the level now over the level before
 * @param noiseKg standard deviation of single weights in the hour before, robust
 * @param kgPerMinute the steepest part
 * @param largestStepShare the largest single step as a share of the gain
 * @param steps how many steps carried at least a tenth of the gain
 * @param swings samples since a quarter of an hour before the onset that lie far outside the ramp: hands, wind, birds
 * @param pathRatio length of the path over the gain since then; 1 for a clean ramp
 * @param heldMinutes how long the level has been within a tenth of where it is now
 */
record Ramp(
        boolean known,
        long onsetMillis,
        double minutes,
        double baseKg,
        double gainKg,
        double noiseKg,
        double kgPerMinute,
        double largestStepShare,
        int steps,
        int swings,
        double pathRatio,
        double heldMinutes) {
    /** Slow gain that rain and drift show for long; the CUSUM's reference value, kg a minute. Common practice. */
    private static final double REFERENCE_KG_PER_MINUTE = 0.004;

    /** The level an hour before lies so far above the level lately, as a share of the gain, where hands were: own choice. */
    private static final double LIFTED_SHARE = 0.3;

    private static final long WINDOW_MILLIS = 75 * 60_000L;
    private static final long BEFORE_MILLIS = 60 * 60_000L;
    private static final Ramp NONE = new Ramp(false, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0);

    /** The gain that is on at an index, or the lack of one. */
    static Ramp upTo(TrapSeries series, int at) {
        Window window = Window.of(series, at, WINDOW_MILLIS + BEFORE_MILLIS);
        if (window.size() < 4 || window.time[window.size() - 1] != series.timeMillis(at)) {
            return NONE;
        }
        int onset = window.onset(WINDOW_MILLIS);
        return window.ramp(onset);
    }

    private static final class Window {
        private final long[] time;
        private final double[] raw;
        private final double[] smooth;

        private Window(long[] time, double[] raw) {
            this.time = time;
            this.raw = raw;
            this.smooth = medianOfThree(raw);
        }

        static Window of(TrapSeries series, int at, long millis) {
            int from = Math.max(0, series.firstAfter(series.timeMillis(at) - millis));
            long[] time = new long[at - from + 1];
            double[] raw = new double[at - from + 1];
            int n = 0;
            for (int i = from; i <= at; i++) {
                double weight = series.value(Quantity.WEIGHT, i);
                if (!Double.isNaN(weight)) {
                    time[n] = series.timeMillis(i);
                    raw[n++] = weight;
                }
            }
            return new Window(Arrays.copyOf(time, n), Arrays.copyOf(raw, n));
        }

        int size() {
            return raw.length;
        }

        private static double[] medianOfThree(double[] raw) {
            double[] smooth = raw.clone();
            for (int i = 1; i + 1 < raw.length; i++) {
                smooth[i] = middle(raw[i - 1], raw[i], raw[i + 1]);
            }
            int last = raw.length - 1;
            if (last >= 2) {
                smooth[last] = middle(raw[last], raw[last - 1], raw[last - 2]);
                smooth[last] = Math.min(smooth[last] + Math.abs(smooth[last - 1] - smooth[last - 2]), raw[last]);
                smooth[last] =
                        raw[last] < smooth[last - 1] ? middle(raw[last], raw[last - 1], raw[last - 2]) : smooth[last];
            }
            return smooth;
        }

        private static double middle(double a, double b, double c) {
            return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
        }

        int onset(long windowMillis) {
            int last = size() - 1;
            int first = last;
            while (first > 1 && time[last] - time[first - 1] <= windowMillis) {
                first--;
            }
            double sum = 0;
            double most = 0;
            int start = first - 1;
            int best = last;
            for (int i = first; i <= last; i++) {
                double minutes = (time[i] - time[i - 1]) / 60_000.0;
                sum += smooth[i] - smooth[i - 1] - REFERENCE_KG_PER_MINUTE * minutes;
                if (sum <= 0) {
                    sum = 0;
                    start = i;
                } else if (sum > most * 0.7) {
                    most = Math.max(sum, most);
                    best = start;
                }
            }
            return best;
        }

        Ramp ramp(int onset) {
            int last = size() - 1;
            double base = base(onset);
            double gain = smooth[last] - base;
            double noise = noise(onset);
            double swingKg = Math.max(0.12, Math.max(5 * noise, 0.25 * Math.abs(gain)));
            int swings = 0;
            double path = 0;
            for (int i = Math.max(1, from(onset, 15)); i <= last; i++) {
                path += Math.abs(smooth[i] - smooth[i - 1]);
                if (raw[i] < base - swingKg || raw[i] > Math.max(base, smooth[last]) + swingKg) {
                    swings++;
                }
            }
            double largest = 0;
            int steps = 0;
            for (int i = onset + 1; i <= last; i++) {
                double step = smooth[i] - smooth[i - 1];
                largest = Math.max(largest, step);
                steps += step > 0.1 * gain ? 1 : 0;
            }
            return new Ramp(
                    true,
                    time[onset],
                    (time[last] - time[onset]) / 60_000.0,
                    base,
                    gain,
                    noise,
                    steepest(onset),
                    gain > 0 ? largest / gain : 1,
                    steps,
                    swings,
                    gain > 0 ? path / gain : 99,
                    held(gain));
        }

        /** Who lifts the box for two samples makes a low level that is none: the hour before knows better. */
        private double base(int onset) {
            double lately = median(from(onset, 20), onset);
            double hour = median(from(onset, 60), onset);
            return hour - lately > LIFTED_SHARE * (smooth[size() - 1] - lately) ? hour : lately;
        }

        private int from(int index, int minutes) {
            int i = index;
            while (i > 0 && time[index] - time[i - 1] <= minutes * 60_000L) {
                i--;
            }
            return i;
        }

        private double median(int from, int to) {
            double[] sorted = Arrays.copyOfRange(raw, from, to + 1);
            Arrays.sort(sorted);
            int n = sorted.length;
            return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
        }

        private double noise(int onset) {
            int from = from(onset, 60);
            int n = onset - from;
            if (n < 3) {
                return 0.02;
            }
            double[] steps = new double[n];
            for (int i = 0; i < n; i++) {
                steps[i] = Math.abs(raw[from + i + 1] - raw[from + i]);
            }
            Arrays.sort(steps);
            return Math.max(0.002, 1.4826 * steps[n / 2] / Math.sqrt(2));
        }

        private double steepest(int onset) {
            int last = size() - 1;
            double most = 0;
            int start = onset;
            for (int end = onset + 1; end <= last; end++) {
                while (time[end] - time[start] > 360_000L && start < end - 1) {
                    start++;
                }
                double minutes = Math.max(3, (time[end] - time[start]) / 60_000.0);
                most = Math.max(most, (smooth[end] - smooth[start]) / minutes);
            }
            return most;
        }

        private double held(double gain) {
            int last = size() - 1;
            int i = last;
            while (i > 0 && Math.abs(smooth[i - 1] - smooth[last]) < Math.max(0.02, 0.1 * gain)) {
                i--;
            }
            return (time[last] - time[i]) / 60_000.0;
        }
    }
}
