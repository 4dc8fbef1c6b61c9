package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.analyzer.drift.ScaleDrift;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitting;

/** Makes the points of a trap's curve from the samples of the nodes that hung in it. */
final class StoredCurve {
    /** A rate needs the count before it, and a dip the counts around it. */
    private static final Duration BEFORE = Duration.ofHours(1);

    private static final double MILLIS_A_MINUTE = 60_000;

    private final Store store;
    private final StoredDrift drifts;

    StoredCurve(Store store, StoredDrift drifts) {
        this.store = store;
        this.drifts = drifts;
    }

    void points(String trap, Instant from, Instant until, Consumer<CurvePoint> points) {
        List<Fitting> fittings = store.line().fittingsIn(trap);
        for (Fitting fitting : fittings) {
            Instant start = later(fitting.from(), from);
            Instant end = fitting.until().isBefore(until) ? fitting.until() : until;
            if (start.isBefore(end)) {
                points(fitting, start, end, points);
            }
        }
    }

    private void points(Fitting fitting, Instant from, Instant until, Consumer<CurvePoint> points) {
        TrapSeries series = series(fitting, later(fitting.from(), from.minus(BEFORE)), until);
        Optional<ScaleDrift> drift = drifts.of(fitting.node(), until).filter(ScaleDrift::sure);
        long first = from.toEpochMilli();
        for (int i = 0; i < series.size(); i++) {
            if (series.timeMillis(i) >= first) {
                points.accept(point(series, i, drift));
            }
        }
    }

    TrapSeries series(Fitting fitting, Instant from, Instant until) {
        TrapSeries series = new TrapSeries(Long.MAX_VALUE / 4);
        store.samples().read(fitting.node(), from, until, series::add);
        return series;
    }

    static CurvePoint point(TrapSeries series, int i, Optional<ScaleDrift> drift) {
        double weight = series.value(Quantity.WEIGHT, i);
        double cell = series.value(Quantity.CELL, i);
        double minutes = i == 0 ? Double.NaN : (series.timeMillis(i) - series.timeMillis(i - 1)) / MILLIS_A_MINUTE;
        double in = counted(series, Quantity.IN, i) ? series.totalIn(i) - series.totalIn(i - 1) : Double.NaN;
        double out = counted(series, Quantity.OUT, i) ? series.totalOut(i) - series.totalOut(i - 1) : Double.NaN;
        return new CurvePoint(
                series.timeMillis(i),
                Double.isNaN(in) && Double.isNaN(out) ? Double.NaN : minutes,
                Math.max(0, in) / minutes,
                Math.max(0, out) / minutes,
                weight,
                drift.map(known -> known.corrected(weight, cell)).orElse(Double.NaN),
                series.value(Quantity.BOX, i),
                cell);
    }

    private static boolean counted(TrapSeries series, Quantity quantity, int i) {
        return i > 0 && !Double.isNaN(series.value(quantity, i)) && !Double.isNaN(series.value(quantity, i - 1));
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}
