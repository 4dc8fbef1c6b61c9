package org.duskline.analyzer.watch;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.DayDip;
import org.duskline.analyzer.detect.DayLoss;
import org.duskline.analyzer.detect.OtherScales;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.trap.Trap;

/** What the sun and the other traps of the line tell about one trap's hour. */
final class TrapSurroundings implements Surroundings {
    private static final long HOUR = 3_600_000L;

    /** Crossings a minute over two hours that show that scouts were there; near the usual threshold. */
    private static final double SCOUTED_PER_MINUTE = 0.8;

    private static final double SILENT_SHARE = 0.25;

    /** So many scales of which none gains say that damp air is only damp; own choice. */
    private static final int TRUSTED_SCALES = 3;

    private static final double DAMP_AIR_ALONE = 0.25;

    /** Keepers are not woken for what a day says, and scales that send late have spoken by then; own choice. */
    private static final long MORNING_AFTER = 19 * HOUR;

    /** Of a scale that was heard of within so long, more is likely to come; own choice. */
    private static final long SPEAKS = 6 * HOUR;

    /** Of so much of a stretch a scale must have been heard to say what came in it; own choice. */
    private static final double HEARD_SHARE = 0.5;

    private final Trap trap;
    private final Daylight daylight;
    private final Collection<TrapWatch> line;
    private final Set<Beyond> without;

    /** @param without kinds of evidence that are left out, to see what they buy */
    TrapSurroundings(Trap trap, Collection<TrapWatch> line, Set<Beyond> without) {
        this.without = without;
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
        double shade = middle(Quantity.CELL, timeMillis);
        return Double.isNaN(shade) ? middle(Quantity.BOX, timeMillis) : shade;
    }

    @Override
    public double shadeCelsius(long timeMillis) {
        return middle(Quantity.CELL, timeMillis);
    }

    private double middle(Quantity quantity, long timeMillis) {
        double[] values = new double[line.size()];
        int n = 0;
        for (TrapWatch watch : line) {
            TrapSeries series = watch.series();
            int at = series.lastAt(timeMillis);
            if (at >= 0 && timeMillis - series.timeMillis(at) <= HOUR) {
                double value = series.value(quantity, at);
                if (!Double.isNaN(value)) {
                    values[n++] = value;
                }
            }
        }
        return median(values, n);
    }

    @Override
    public boolean weighs(Beyond kind) {
        return !without.contains(kind);
    }

    @Override
    public boolean keeperWasThere(long fromMillis, long toMillis) {
        return own().map(hands -> hands.between(fromMillis, toMillis)).orElse(false);
    }

    @Override
    public boolean keeperEmptied(long afterMillis, long toMillis) {
        return own().map(hands -> hands.emptied(afterMillis, toMillis)).orElse(false);
    }

    @Override
    public boolean keeperShut(long timeMillis) {
        return own().map(hands -> hands.shut(timeMillis)).orElse(false);
    }

    private Optional<KeepersHands> own() {
        return ownWatch().map(TrapWatch::hands);
    }

    private Optional<TrapWatch> ownWatch() {
        return line.stream().filter(watch -> watch.trap() == trap).findFirst();
    }

    @Override
    public double counterBlindSeconds() {
        return ownWatch()
                .flatMap(TrapWatch::counter)
                .map(block -> block.deadTime().toMillis() / 1000.0 / block.lanes())
                .orElse(Double.NaN);
    }

    @Override
    public double scoutsSilenced(long fromMillis, long toMillis) {
        int scouted = 0;
        int silent = 0;
        for (TrapWatch watch : line) {
            if (watch.trap() == trap || !watch.fitted().hasCounter() || watch.occupied()) {
                continue;
            }
            double before = crossingsPerMinute(watch.series(), fromMillis - 2 * HOUR, fromMillis);
            double after = crossingsPerMinute(watch.series(), toMillis - HOUR, toMillis);
            if (before >= SCOUTED_PER_MINUTE && !Double.isNaN(after)) {
                scouted++;
                silent += after < SILENT_SHARE * before ? 1 : 0;
            }
        }
        return scouted == 0 ? Double.NaN : silent / (double) scouted;
    }

    private static double crossingsPerMinute(TrapSeries series, long fromMillis, long toMillis) {
        int from = series.lastAt(fromMillis);
        int to = series.lastAt(toMillis);
        if (from < 0 || to <= from || toMillis - series.timeMillis(to) > HOUR / 2) {
            return Double.NaN;
        }
        double minutes = (series.timeMillis(to) - series.timeMillis(from)) / 60_000.0;
        return (series.totalIn(to) + series.totalOut(to) - series.totalIn(from) - series.totalOut(from)) / minutes;
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
        if (scales >= TRUSTED_SCALES && wet == 0) {
            humid *= DAMP_AIR_ALONE;
        }
        double soaking = wet < 2 ? 0 : between(wet / (double) scales, 0.2, 0.5);
        return Math.min(1, Math.max(soaking, humid) + 0.3 * Math.min(soaking, humid));
    }

    /** Whether another trap's scale can serve as control: none that is itself taking in a swarm in these hours. */
    private boolean controls(TrapWatch watch, long timeMillis) {
        if (!weighs(Beyond.NEIGHBOURS)
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
    public OtherScales otherScales(long fromMillis, long toMillis, double leastKg) {
        int speaking = 0;
        int heard = 0;
        int soaked = 0;
        for (TrapWatch watch : line) {
            if (controls(watch, toMillis)) {
                double gain = gainKg(watch.series(), fromMillis, toMillis);
                speaking += watch.series().lastAt(toMillis) >= watch.series().firstAfter(toMillis - SPEAKS) ? 1 : 0;
                boolean wet = gain > leastKg;
                boolean dry = gain <= leastKg && sampledTwice(watch.series(), fromMillis, toMillis);
                heard += wet || dry ? 1 : 0;
                soaked += wet ? 1 : 0;
            }
        }
        return new OtherScales(speaking, heard, soaked);
    }

    @Override
    public long lastWholeDaysNoon(long timeMillis) {
        long noon = daylight.noon(timeMillis);
        while (timeMillis - noon < MORNING_AFTER) {
            noon = daylight.noon(noon - 24 * HOUR);
        }
        return noon;
    }

    @Override
    public Optional<DayDip> dip(long noonMillis) {
        return weighs(Beyond.NEIGHBOURS)
                ? ownWatch().flatMap(watch -> DayDips.of(watch, line, noonMillis))
                : Optional.empty();
    }

    @Override
    public Optional<DayLoss> loss(long noonMillis) {
        List<TrapSeries> others = line.stream()
                .filter(watch -> watch.trap() != trap && watch.fitted().hasScale())
                .filter(watch ->
                        watch.emptyBetween(noonMillis - DayLoss.NIGHT_BEFORE, noonMillis + DayLoss.NIGHT_AFTER))
                .map(TrapWatch::series)
                .toList();
        return ownWatch().flatMap(watch -> DayLoss.of(watch.series(), others, noonMillis));
    }

    /** One sample after a gain began stands alone against two from before it. */
    private static boolean sampledTwice(TrapSeries series, long fromMillis, long toMillis) {
        return series.lastAt(toMillis) >= series.lastAt(fromMillis) + 2;
    }

    private static double gainKg(TrapSeries series, long fromMillis, long toMillis) {
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
