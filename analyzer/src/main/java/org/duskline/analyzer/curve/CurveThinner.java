package org.duskline.analyzer.curve;

import java.time.Instant;
import java.util.function.Consumer;

/**
 * Thins a curve to as many rows as the screen has pixel columns, keeping the lowest and the highest value of each
 * column, so that a rush of ten minutes is still seen in a season's view. That minimum and maximum per column leave a
 * line chart's picture as it was, but for the joints between columns, is shown by Jugel et al., "M4: A
 * Visualization-Oriented Time Series Data Aggregation", Proceedings of the VLDB Endowment 7(10), 2014.
 *
 * <p>Takes the points one by one in time order; memory grows with the columns, not with the points.
 */
public final class CurveThinner implements Consumer<CurvePoint> {
    private static final Column GAP = new Column();

    private final Instant from;
    private final Instant until;
    private final long fromMillis;
    private final long untilMillis;
    private final double columnMillis;
    private final Rows rows = new Rows();
    private final Column column = new Column();
    private final UsualPeriod usualPeriod = new UsualPeriod();
    private long columnNumber = -1;
    private long lastMillis = Long.MIN_VALUE;
    private boolean gapBefore;
    private int points;

    /**
     * @param from first instant of the view
     * @param until first instant after it
     * @param columns number of pixel columns, at least 1
     */
    public CurveThinner(Instant from, Instant until, int columns) {
        if (!from.isBefore(until)) {
            throw new IllegalArgumentException("The view ends (" + until + ") before it begins (" + from + ").");
        }
        if (columns < 1) {
            throw new IllegalArgumentException("A view needs at least one column, not " + columns + ".");
        }
        this.from = from;
        this.until = until;
        this.fromMillis = from.toEpochMilli();
        this.untilMillis = until.toEpochMilli();
        this.columnMillis = (untilMillis - fromMillis) / (double) columns;
    }

    @Override
    public void accept(CurvePoint point) {
        long time = point.timeMillis();
        if (time < fromMillis || time >= untilMillis || time < lastMillis) {
            return;
        }
        long number = (long) ((time - fromMillis) / columnMillis);
        if (number != columnNumber) {
            finishColumn();
            columnNumber = number;
            gapBefore = isGap(time);
        }
        column.add(point);
        points++;
        if (lastMillis != Long.MIN_VALUE) {
            usualPeriod.follow(time - lastMillis);
        }
        lastMillis = time;
    }

    /** The curve of all that was taken so far. */
    public Curve curve() {
        finishColumn();
        columnNumber = -1;
        return new Curve(from, until, rows, points);
    }

    private boolean isGap(long time) {
        // A silence shorter than two columns can't be seen and would only break the line into dust.
        return lastMillis != Long.MIN_VALUE && time - lastMillis > Math.max(usualPeriod.gapMillis(), 2 * columnMillis);
    }

    private void finishColumn() {
        if (column.isEmpty()) {
            return;
        }
        long centre = fromMillis + Math.round((columnNumber + 0.5) * columnMillis);
        long time = column.timeMillis(centre);
        if (gapBefore) {
            rows.add(rows.lastTimeMillis() + (time - rows.lastTimeMillis()) / 2, GAP);
        }
        rows.add(time, column);
        column.clear();
        gapBefore = false;
    }
}
