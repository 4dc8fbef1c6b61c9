package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/** Looks up how a trap is now. */
final class StoredTrap {
    private static final List<Kind> WEIGHTIEST_FIRST = List.of(
            Kind.OVERHEATING,
            Kind.GONE,
            Kind.LEAKING,
            Kind.MOVE_IN,
            Kind.DEPARTURE,
            Kind.ROBBING,
            Kind.SCOUTING,
            Kind.FAULTY,
            Kind.UNHEARD,
            Kind.BATTERY_LOW,
            Kind.DISTURBED,
            Kind.TARE_SHIFT,
            Kind.LODGER,
            Kind.SOAKED);

    /** The newest sample lies close before the last receipt, unless the node delivers late or its clock was wrong. */
    private static final List<Duration> LOOK_BACK =
            List.of(Duration.ofHours(2), Duration.ofDays(2), Duration.ofDays(400));

    private final Store store;
    private final StoredCurve curves;
    private final Function<String, Condition> conditions;

    StoredTrap(Store store, StoredCurve curves, Function<String, Condition> conditions) {
        this.store = store;
        this.curves = curves;
        this.conditions = conditions;
    }

    TrapNow now(Trap trap, Instant now, LineAtOnce line) {
        Optional<Fitting> latest = line.latestIn(trap.name());
        Optional<Fitting> current = latest.filter(fitting -> fitting.covers(now));
        Optional<HeardNode> heard = latest.flatMap(line::heardThere);
        Optional<TrapSeries> series = latest.filter(fitting -> heard.isPresent())
                .flatMap(fitting -> newest(fitting, heard.get().lastHeard()));
        Optional<CurvePoint> last = series.map(one -> StoredCurve.point(one, one.size() - 1, Optional.empty()));
        return new TrapNow(
                trap,
                latest.map(Fitting::fitted).orElse(Fitted.BOTH),
                current.map(Fitting::node),
                heard.isPresent() ? conditions.apply(trap.name()) : Condition.UNHEARD,
                heard.map(HeardNode::lastHeard),
                last.map(point -> Instant.ofEpochMilli(point.timeMillis())),
                last.map(CurvePoint::weightKg).orElse(Double.NaN),
                last.map(CurvePoint::inPerMinute).orElse(Double.NaN),
                last.map(CurvePoint::outPerMinute).orElse(Double.NaN),
                last.map(CurvePoint::boxCelsius).orElse(Double.NaN),
                last.map(CurvePoint::cellCelsius).orElse(Double.NaN),
                latest.filter(fitting -> last.isPresent())
                        .map(fitting -> battery(fitting, last.get()))
                        .orElse(Double.NaN),
                weightiest(trap.name(), line.standing()));
    }

    private Optional<TrapSeries> newest(Fitting fitting, Instant lastHeard) {
        Instant end = lastHeard.plusSeconds(60).isBefore(fitting.until()) ? lastHeard.plusSeconds(60) : fitting.until();
        for (Duration back : LOOK_BACK) {
            Instant start = end.minus(back).isAfter(fitting.from()) ? end.minus(back) : fitting.from();
            TrapSeries series = curves.series(fitting, start, end);
            if (series.size() > 0) {
                return Optional.of(series);
            }
        }
        return Optional.empty();
    }

    private double battery(Fitting fitting, CurvePoint last) {
        double[] volts = {Double.NaN};
        Instant time = Instant.ofEpochMilli(last.timeMillis());
        store.samples().read(fitting.node(), time.minus(Duration.ofHours(2)), time.plusMillis(1), (Sample sample) -> {
            if (!Double.isNaN(sample.batteryVolts())) {
                volts[0] = sample.batteryVolts();
            }
        });
        return volts[0];
    }

    private static Optional<Finding> weightiest(String trap, List<Finding> standing) {
        return standing.stream()
                .filter(finding -> finding.trap().equals(trap))
                .min(Comparator.<Finding>comparingInt(finding -> WEIGHTIEST_FIRST.indexOf(finding.kind()))
                        .thenComparing(Finding::onset, Comparator.reverseOrder()));
    }
}
