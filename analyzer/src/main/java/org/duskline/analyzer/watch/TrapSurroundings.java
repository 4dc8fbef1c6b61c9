package org.duskline.analyzer.watch;

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
import org.duskline.collector.trap.Trap;

/** What the sun and the other traps of the line tell about one trap's hour. */
final class TrapSurroundings implements Surroundings {
    private static final long HOUR = 3_600_000L;

    /** Crossings a minute over two hours that show that scouts were there; near the usual threshold. */
    private static final double SCOUTED_PER_MINUTE = 0.8;

    private static final double SILENT_SHARE = 0.25;

    /** Keepers are not woken for what a day says, and scales that send late have spoken by then; own choice. */
    private static final long MORNING_AFTER = 19 * HOUR;

    private final Trap trap;
    private final Daylight daylight;
    private final Collection<TrapWatch> line;
    private final Set<Beyond> without;
    private final NeighbourScales scales;
    private final LineWeather weather;

    /** @param without kinds of evidence that are left out, to see what they buy */
    TrapSurroundings(Trap trap, Collection<TrapWatch> line, Set<Beyond> without) {
        this.without = without;
        this.trap = trap;
        this.daylight = new Daylight(trap);
        this.line = line;
        this.scales = new NeighbourScales(trap, line, without);
        this.weather = new LineWeather(line, scales);
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
        return weather.outsideCelsius(timeMillis);
    }

    @Override
    public double shadeCelsius(long timeMillis) {
        return weather.shadeCelsius(timeMillis);
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
        return weather.rain(timeMillis);
    }

    @Override
    public double neighboursGainKg(long fromMillis, long toMillis) {
        return scales.medianGainKg(fromMillis, toMillis);
    }

    @Override
    public OtherScales otherScales(long fromMillis, long toMillis, double leastKg) {
        return scales.heard(fromMillis, toMillis, leastKg);
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
}
