package org.duskline.analyzer.watch;

import java.util.Arrays;
import java.util.Collection;
import java.util.Set;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.OtherScales;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.trap.Trap;

/** The scales of the other traps of the line, as controls for one trap's: rain soaks them all, a swarm comes to one. */
final class NeighbourScales {
    private static final long HOUR = 3_600_000L;

    /** Of a scale that was heard of within so long, more is likely to come; own choice. */
    private static final long SPEAKS = 6 * HOUR;

    /** Of so much of a stretch a scale must have been heard to say what came in it; own choice. */
    private static final double HEARD_SHARE = 0.5;

    private final Trap trap;
    private final Collection<TrapWatch> line;
    private final Set<Beyond> without;

    /** @param without kinds of evidence that are left out, to see what they buy */
    NeighbourScales(Trap trap, Collection<TrapWatch> line, Set<Beyond> without) {
        this.trap = trap;
        this.line = line;
        this.without = without;
    }

    /** What one of the line's scales gained in that time, kg; NaN where it is no control or was hardly heard. */
    double gainKg(TrapWatch watch, long fromMillis, long toMillis) {
        return controls(watch, toMillis) ? risenKg(watch.series(), fromMillis, toMillis) : Double.NaN;
    }

    /** The middle one of what they gained in that time, the lower of two, kg; NaN when fewer than two of them know. */
    double medianGainKg(long fromMillis, long toMillis) {
        double[] gains = new double[line.size()];
        int n = 0;
        for (TrapWatch watch : line) {
            double gain = gainKg(watch, fromMillis, toMillis);
            if (!Double.isNaN(gain)) {
                gains[n++] = gain;
            }
        }
        if (n < 2) {
            return Double.NaN;
        }
        Arrays.sort(gains, 0, n);
        return gains[(n - 1) / 2];
    }

    /** How many of them were heard of in that time, and how many gained more than so many kilograms. */
    OtherScales heard(long fromMillis, long toMillis, double leastKg) {
        int speaking = 0;
        int heard = 0;
        int soaked = 0;
        for (TrapWatch watch : line) {
            if (controls(watch, toMillis)) {
                double gain = risenKg(watch.series(), fromMillis, toMillis);
                speaking += watch.series().lastAt(toMillis) >= watch.series().firstAfter(toMillis - SPEAKS) ? 1 : 0;
                boolean wet = gain > leastKg;
                boolean dry = gain <= leastKg && sampledTwice(watch.series(), fromMillis, toMillis);
                heard += wet || dry ? 1 : 0;
                soaked += wet ? 1 : 0;
            }
        }
        return new OtherScales(speaking, heard, soaked);
    }

    /** Whether another trap's scale can serve as control: none that is itself taking in a swarm in these hours. */
    private boolean controls(TrapWatch watch, long timeMillis) {
        if (without.contains(Beyond.NEIGHBOURS)
                || watch.trap() == trap
                || !watch.fitted().hasScale()
                || watch.fillingAt(timeMillis)) {
            return false;
        }
        TrapSeries series = watch.series();
        int now = series.lastAt(timeMillis);
        int before = series.lastAt(timeMillis - HOUR);
        double netIn = now < 0 || before < 0
                ? 0
                : series.totalIn(now) - series.totalOut(now) - series.totalIn(before) + series.totalOut(before);
        return netIn < 100;
    }

    /** One sample after a gain began stands alone against two from before it. */
    private static boolean sampledTwice(TrapSeries series, long fromMillis, long toMillis) {
        return series.lastAt(toMillis) >= series.lastAt(fromMillis) + 2;
    }

    private static double risenKg(TrapSeries series, long fromMillis, long toMillis) {
        int from = series.lastAt(fromMillis);
        int to = series.lastAt(toMillis);
        if (from < 2
                || to <= from
                || series.timeMillis(to) - fromMillis < HEARD_SHARE * (toMillis - fromMillis)
                || fromMillis - series.timeMillis(from) > HOUR) {
            return Double.NaN;
        }
        return series.median(Quantity.WEIGHT, to - 2, to) - series.median(Quantity.WEIGHT, from - 2, from);
    }
}
