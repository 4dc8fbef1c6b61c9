package org.duskline.analyzer.replay;

import java.util.Arrays;
import java.util.List;
import org.duskline.analyzer.replay.Past.Brought;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.wire.Sample;

/** What one node told while it hung in one trap, in the order of receipt. Growing needs one thread; reading does not. */
final class FittingPast {
    private static final int LEAST = 256;

    private final Fitting fitting;
    private final PackedColumn[] columns = new PackedColumn[9];
    private long[] time = new long[LEAST];
    private long[] boot = new long[LEAST];
    private int[] marks = new int[LEAST];
    private int size;

    FittingPast(Fitting fitting) {
        this.fitting = fitting;
        Arrays.setAll(columns, i -> new PackedColumn());
    }

    Fitting fitting() {
        return fitting;
    }

    int size() {
        return size;
    }

    void add(Sample sample) {
        if (size == time.length) {
            int more = size + size / 2;
            time = Arrays.copyOf(time, more);
            boot = Arrays.copyOf(boot, more);
            marks = Arrays.copyOf(marks, more);
        }
        time[size] = sample.timeMillis();
        boot[size] = sample.boot();
        marks[size] = sample.marks();
        columns[0].add(sample.in());
        columns[1].add(sample.out());
        columns[2].add(sample.weightKg());
        columns[3].add(sample.weightSdKg());
        columns[4].add(sample.cellCelsius());
        columns[5].add(sample.boxCelsius());
        columns[6].add(sample.humidityPercent());
        columns[7].add(sample.batteryVolts());
        columns[8].add(sample.loadCount());
        size++;
    }

    long timeMillis(int index) {
        return time[index];
    }

    /** The samples that one message brought. */
    List<Sample> samples(Brought brought) {
        Sample[] samples = new Sample[brought.count()];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = sample(brought.first() + i, brought.receivedMillis());
        }
        return List.of(samples);
    }

    private Sample sample(int i, long receivedMillis) {
        return new Sample(
                time[i],
                receivedMillis,
                columns[0].get(i),
                columns[1].get(i),
                columns[2].get(i),
                columns[8].get(i),
                columns[3].get(i),
                columns[4].get(i),
                columns[5].get(i),
                columns[6].get(i),
                columns[7].get(i),
                boot[i],
                -1,
                marks[i]);
    }
}
