package org.duskline.analyzer.curve;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * The curve as rows to be read: by the hour up to three days, by the day beyond. Rows begin on the site's full hours or
 * midnights, also where the clocks change. Takes the points in time order.
 */
public final class CurveTable implements Consumer<CurvePoint> {
    private static final Duration LONGEST_BY_THE_HOUR = Duration.ofHours(73);

    private final Instant until;
    private final ZoneId zone;
    private final ChronoUnit step;
    private final List<CurveRow> rows = new ArrayList<>();
    private Stretch stretch;

    public CurveTable(Instant from, Instant until, ZoneId zone) {
        this.until = until;
        this.zone = zone;
        this.step =
                Duration.between(from, until).compareTo(LONGEST_BY_THE_HOUR) <= 0 ? ChronoUnit.HOURS : ChronoUnit.DAYS;
        this.stretch = new Stretch(from, next(from));
    }

    @Override
    public void accept(CurvePoint point) {
        Instant time = Instant.ofEpochMilli(point.timeMillis());
        if (time.isBefore(stretch.from) || !time.isBefore(until)) {
            return;
        }
        while (!time.isBefore(stretch.until)) {
            turnOver();
        }
        stretch.add(point);
    }

    /** The rows up to the end of the view. */
    public List<CurveRow> rows() {
        while (stretch.until.isBefore(until)) {
            turnOver();
        }
        List<CurveRow> all = new ArrayList<>(rows);
        all.add(stretch.row());
        return List.copyOf(all);
    }

    public boolean byTheHour() {
        return step == ChronoUnit.HOURS;
    }

    private void turnOver() {
        rows.add(stretch.row());
        stretch = new Stretch(stretch.until, next(stretch.until));
    }

    private Instant next(Instant time) {
        ZonedDateTime start = time.atZone(zone).truncatedTo(step);
        Instant end = start.plus(1, step).toInstant();
        return end.isBefore(until) ? end : until;
    }

    /** One row while it is being filled. */
    private static final class Stretch {
        private final Instant from;
        private final Instant until;
        private double beesIn = Double.NaN;
        private double beesOut = Double.NaN;
        private double busiest = Double.NaN;
        private double firstWeight = Double.NaN;
        private double lastWeight = Double.NaN;
        private double lowBox = Double.NaN;
        private double highBox = Double.NaN;
        private int samples;

        Stretch(Instant from, Instant until) {
            this.from = from;
            this.until = until;
        }

        void add(CurvePoint point) {
            samples++;
            beesIn = sum(beesIn, point.inPerMinute() * point.minutes());
            beesOut = sum(beesOut, point.outPerMinute() * point.minutes());
            busiest = larger(busiest, point.inPerMinute());
            firstWeight = Double.isNaN(firstWeight) ? point.weightKg() : firstWeight;
            lastWeight = Double.isNaN(point.weightKg()) ? lastWeight : point.weightKg();
            lowBox = -larger(-lowBox, -point.boxCelsius());
            highBox = larger(highBox, point.boxCelsius());
        }

        CurveRow row() {
            return new CurveRow(
                    from, until, beesIn, beesOut, busiest, firstWeight, lastWeight, lowBox, highBox, samples);
        }

        private static double sum(double known, double more) {
            if (Double.isNaN(more)) {
                return known;
            }
            return Double.isNaN(known) ? more : known + more;
        }

        private static double larger(double known, double other) {
            if (Double.isNaN(other)) {
                return known;
            }
            return Double.isNaN(known) ? other : Math.max(known, other);
        }
    }
}
