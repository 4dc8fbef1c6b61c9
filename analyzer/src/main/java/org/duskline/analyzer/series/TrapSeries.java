package org.duskline.analyzer.series;

import java.util.Arrays;
import org.duskline.collector.wire.Mark;
import org.duskline.collector.wire.Sample;

/**
 * The last days of one trap in columns, in time order. Late samples are put in their place. Every index is valid until
 * the next {@link #add}. Not for use by several threads.
 */
public final class TrapSeries {
    /** So many readings before a late one are counted anew, so that dips and restarts around it are seen whole. */
    private static final int RECOUNTED = 12;

    private static final int FEW = 24;

    private final long keptMillis;
    private int size;
    private long[] time = new long[256];
    private final Column[] columns = new Column[Quantity.values().length];
    private final Column totalIn = new Column();
    private final Column totalOut = new Column();
    private long[] boot = new long[256];
    private CounterRun inRun = new CounterRun(0);
    private CounterRun outRun = new CounterRun(0);

    /** @param keptMillis how far back samples are kept, milliseconds before the newest */
    public TrapSeries(long keptMillis) {
        this.keptMillis = keptMillis;
        Arrays.setAll(columns, i -> new Column());
    }

    /**
     * Puts a sample in its place.
     *
     * @return the time from which on the series changed, Unix milliseconds; {@link Long#MAX_VALUE} where the sample is
     *     older than what is kept
     */
    public long add(Sample sample) {
        if (size > 0 && sample.timeMillis() < time[size - 1] - keptMillis) {
            return Long.MAX_VALUE;
        }
        int at = size;
        while (at > 0 && time[at - 1] > sample.timeMillis()) {
            at--;
        }
        if (at > 0 && time[at - 1] == sample.timeMillis()) {
            merge(at - 1, sample);
            recount(at - 1);
            return sample.timeMillis();
        }
        boolean late = at < size;
        makeRoom(at);
        time[at] = sample.timeMillis();
        boot[at] = sample.boot();
        for (Quantity quantity : Quantity.values()) {
            columns[quantity.ordinal()].values[at] = quantity.clean(sample);
        }
        if (late) {
            recount(at);
        } else {
            count(at);
        }
        trim();
        return sample.timeMillis();
    }

    private void merge(int at, Sample sample) {
        for (Quantity quantity : Quantity.values()) {
            double value = quantity.clean(sample);
            if (!Double.isNaN(value)) {
                columns[quantity.ordinal()].values[at] = value;
            }
        }
        boot[at] = Math.max(boot[at], sample.boot());
    }

    private void makeRoom(int at) {
        if (size == time.length) {
            int capacity = size * 2;
            time = Arrays.copyOf(time, capacity);
            boot = Arrays.copyOf(boot, capacity);
            for (Column column : columns) {
                column.grow(capacity);
            }
            totalIn.grow(capacity);
            totalOut.grow(capacity);
        }
        int moved = size - at;
        System.arraycopy(time, at, time, at + 1, moved);
        System.arraycopy(boot, at, boot, at + 1, moved);
        for (Column column : columns) {
            System.arraycopy(column.values, at, column.values, at + 1, moved);
        }
        System.arraycopy(totalIn.values, at, totalIn.values, at + 1, moved);
        System.arraycopy(totalOut.values, at, totalOut.values, at + 1, moved);
        size++;
    }

    private void recount(int changed) {
        int from = Math.max(0, changed - RECOUNTED);
        inRun = new CounterRun(from == 0 ? 0 : totalIn.values[from - 1]);
        outRun = new CounterRun(from == 0 ? 0 : totalOut.values[from - 1]);
        if (from > 0) {
            inRun.next(columns[Quantity.IN.ordinal()].values[from - 1], boot[from - 1], 1);
            outRun.next(columns[Quantity.OUT.ordinal()].values[from - 1], boot[from - 1], 1);
        }
        for (int i = from; i < size; i++) {
            count(i);
        }
    }

    private void count(int i) {
        double minutes = i == 0 ? 1 : (time[i] - time[i - 1]) / 60_000.0;
        totalIn.values[i] = inRun.next(columns[Quantity.IN.ordinal()].values[i], boot[i], minutes);
        totalOut.values[i] = outRun.next(columns[Quantity.OUT.ordinal()].values[i], boot[i], minutes);
    }

    private void trim() {
        if (time[size - 1] - time[0] < keptMillis + keptMillis / 4) {
            return;
        }
        int from = firstAfter(time[size - 1] - keptMillis);
        size -= from;
        System.arraycopy(time, from, time, 0, size);
        System.arraycopy(boot, from, boot, 0, size);
        for (Column column : columns) {
            System.arraycopy(column.values, from, column.values, 0, size);
        }
        System.arraycopy(totalIn.values, from, totalIn.values, 0, size);
        System.arraycopy(totalOut.values, from, totalOut.values, 0, size);
    }

    public int size() {
        return size;
    }

    public long timeMillis(int i) {
        return time[i];
    }

    /** A quantity at an index, NaN where it was not sent or absurd. */
    public double value(Quantity quantity, int i) {
        return columns[quantity.ordinal()].values[i];
    }

    /** Bees counted inward from the start of the series to an index, over all restarts. */
    public double totalIn(int i) {
        return totalIn.values[i];
    }

    /** Bees counted outward from the start of the series to an index, over all restarts. */
    public double totalOut(int i) {
        return totalOut.values[i];
    }

    /** The first index later than a time; {@link #size()} where there is none. */
    public int firstAfter(long timeMillis) {
        if (size == 0 || time[size - 1] <= timeMillis) {
            return size;
        }
        if (time[0] > timeMillis) {
            return 0;
        }
        // Nodes speak at regular times, so that the place is nearly known before the search.
        int guess = (int) ((timeMillis - time[0]) / (double) (time[size - 1] - time[0]) * (size - 1));
        int reach = 1;
        int low = guess;
        while (time[low] > timeMillis) {
            low = Math.max(0, low - reach);
            reach *= 2;
        }
        int high = Math.max(guess, low + 1);
        reach = 1;
        while (time[high] <= timeMillis) {
            low = high;
            high = Math.min(size - 1, high + reach);
            reach *= 2;
        }
        return searchAfter(timeMillis, low + 1, high);
    }

    private int searchAfter(long timeMillis, int from, int to) {
        int low = from;
        int high = to;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (time[middle] <= timeMillis) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The last index at or before a time; -1 where there is none. */
    public int lastAt(long timeMillis) {
        return firstAfter(timeMillis) - 1;
    }

    /** The median of a quantity over an inclusive range of indices; NaN where nothing was sent. */
    public double median(Quantity quantity, int from, int to) {
        double[] values = columns[quantity.ordinal()].values;
        double[] sorted = new double[Math.max(0, to - from + 1)];
        int n = 0;
        for (int i = Math.max(from, 0); i <= Math.min(to, size - 1); i++) {
            if (!Double.isNaN(values[i])) {
                sorted[n++] = values[i];
            }
        }
        if (n == 0) {
            return Double.NaN;
        }
        sort(sorted, n);
        return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
    }

    /** By hand where there are few, as there nearly always are: a season asks for millions of medians of five. */
    private static void sort(double[] values, int n) {
        if (n > FEW) {
            Arrays.sort(values, 0, n);
            return;
        }
        for (int i = 1; i < n; i++) {
            double value = values[i];
            int place = i;
            for (; place > 0 && values[place - 1] > value; place--) {
                values[place] = values[place - 1];
            }
            values[place] = value;
        }
    }

    /** The quantities that a series keeps, each with its way of leaving absurd values out. */
    public enum Quantity {
        IN(Mark.ABSURD_COUNT),
        OUT(Mark.ABSURD_COUNT),
        WEIGHT(Mark.ABSURD_WEIGHT),
        WEIGHT_SD(Mark.ABSURD_WEIGHT),
        CELL(Mark.ABSURD_CELL),
        BOX(Mark.ABSURD_BOX),
        HUMIDITY(Mark.ABSURD_HUMIDITY),
        BATTERY(Mark.ABSURD_BATTERY);

        private final Mark absurd;

        Quantity(Mark absurd) {
            this.absurd = absurd;
        }

        double clean(Sample sample) {
            if (sample.marked(absurd)) {
                return Double.NaN;
            }
            return switch (this) {
                case IN -> sample.in();
                case OUT -> sample.out();
                case WEIGHT -> sample.weightKg();
                case WEIGHT_SD -> sample.weightSdKg();
                case CELL -> sample.cellCelsius();
                case BOX -> sample.boxCelsius();
                case HUMIDITY -> sample.humidityPercent();
                case BATTERY -> sample.batteryVolts();
            };
        }
    }

    private static final class Column {
        private double[] values = new double[256];

        void grow(int capacity) {
            values = Arrays.copyOf(values, capacity);
        }
    }
}
