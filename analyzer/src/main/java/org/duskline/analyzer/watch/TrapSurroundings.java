package org.duskline.analyzer.watch;

import java.util.Arrays;
import java.util.Collection;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.trap.Trap;

/** What the sun and the other traps of the line tell about one trap's hour. */
final class TrapSurroundings implements Surroundings {
    private static final long HOUR = 3_600_000L;

    private final Trap trap;
    private final Daylight daylight;
    private final Collection<TrapWatch> line;

    TrapSurroundings(Trap trap, Collection<TrapWatch> line) {
        this.trap = trap;
        this.daylight = new Daylight(trap);
        this.line = line;
    }

    @Override
    public double hoursAfterSunrise(long timeMillis) {
        return daylight.hoursAfterSunrise(timeMillis);
    }

    @Override
    public double hoursBeforeSunset(long timeMillis) {
        return daylight.hoursBeforeSunset(timeMillis);
    }

    @Override
    public double outsideCelsius(long timeMillis) {
        double[] cells = new double[line.size()];
        double[] boxes = new double[line.size()];
        int nCells = 0;
        int nBoxes = 0;
        for (TrapWatch watch : line) {
            TrapSeries series = watch.series();
            int at = series.lastAt(timeMillis);
            if (at < 0 || timeMillis - series.timeMillis(at) > HOUR) {
                continue;
            }
            double cell = series.value(Quantity.CELL, at);
            double box = series.value(Quantity.BOX, at);
            if (!Double.isNaN(cell)) {
                cells[nCells++] = cell;
            } else if (!Double.isNaN(box)) {
                boxes[nBoxes++] = box;
            }
        }
        return nCells > 0 ? median(cells, nCells) : median(boxes, nBoxes);
    }

    @Override
    public double rain(long timeMillis) {
        double[] humidities = new double[line.size()];
        int nHumidities = 0;
        int scales = 0;
        int wet = 0;
        for (TrapWatch watch : line) {
            TrapSeries series = watch.series();
            int at = series.lastAt(timeMillis);
            if (at < 4 || timeMillis - series.timeMillis(at) > HOUR) {
                continue;
            }
            double humidity = series.value(Quantity.HUMIDITY, at);
            if (!Double.isNaN(humidity)) {
                humidities[nHumidities++] = humidity;
            }
            if (controls(watch, timeMillis)) {
                double gain = gainKg(series, timeMillis - HOUR, timeMillis);
                scales += Double.isNaN(gain) ? 0 : 1;
                wet += gain > 0.025 && gain < 3 ? 1 : 0;
            }
        }
        double humid = nHumidities == 0 ? 0 : 0.6 * between(median(humidities, nHumidities), 82, 95);
        double soaking = wet < 2 ? 0 : between(wet / (double) scales, 0.2, 0.5);
        return Math.min(1, Math.max(soaking, humid) + 0.3 * Math.min(soaking, humid));
    }

    /** Whether another trap's scale can serve as control: none that is itself taking in a swarm in these hours. */
    private boolean controls(TrapWatch watch, long timeMillis) {
        if (watch.trap() == trap || !watch.fitted().hasScale() || watch.fillingAt(timeMillis)) {
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

    @Override
    public double neighboursGainKg(long fromMillis, long toMillis) {
        double[] gains = new double[line.size()];
        int n = 0;
        for (TrapWatch watch : line) {
            if (controls(watch, toMillis)) {
                double gain = gainKg(watch.series(), fromMillis, toMillis);
                if (!Double.isNaN(gain)) {
                    gains[n++] = gain;
                }
            }
        }
        if (n < 2) {
            return Double.NaN;
        }
        Arrays.sort(gains, 0, n);
        return gains[(n - 1) / 2];
    }

    @Override
    public double neighboursSoakedShare(long fromMillis, long toMillis) {
        int scales = 0;
        int soaked = 0;
        for (TrapWatch watch : line) {
            if (controls(watch, toMillis)) {
                double gain = gainKg(watch.series(), fromMillis, toMillis);
                scales += Double.isNaN(gain) ? 0 : 1;
                soaked += gain > 0.02 ? 1 : 0;
            }
        }
        double share = scales < 2 ? 0 : soaked / (double) scales;
        // One alone may be another swarm, a bird or hands.
        return soaked < 2 ? Math.min(share, 0.1) : share;
    }

    private static double gainKg(TrapSeries series, long fromMillis, long toMillis) {
        int from = series.lastAt(fromMillis);
        int to = series.lastAt(toMillis);
        if (from < 2
                || to <= from
                || toMillis - series.timeMillis(to) > HOUR
                || fromMillis - series.timeMillis(from) > HOUR) {
            return Double.NaN;
        }
        return series.median(Quantity.WEIGHT, to - 2, to) - series.median(Quantity.WEIGHT, from - 2, from);
    }

    private static double between(double value, double low, double high) {
        return Math.max(0, Math.min(1, (value - low) / (high - low)));
    }

    private static double median(double[] values, int n) {
        if (n == 0) {
            return Double.NaN;
        }
        Arrays.sort(values, 0, n);
        return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
    }
}
