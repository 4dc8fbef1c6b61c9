package org.duskline.collector.collect;

import java.util.Arrays;
import java.util.List;

/**
 * How often a node usually sends: the median distance of its last packs in their own time, so that a backlog delivered
 * in one breath doesn't look like haste.
 */
final class Cadence {
    static final int PACKS = 10;
    private static final long UNKNOWN_MILLIS = 60_000;
    private static final int ENOUGH = 3;

    private final long[] newest = new long[PACKS];
    private int count;

    /** From what is known, latest first. */
    Cadence(List<Long> latestFirst) {
        for (int i = latestFirst.size() - 1; i >= 0; i--) {
            add(latestFirst.get(i));
        }
    }

    void add(long newestMillis) {
        newest[count % PACKS] = newestMillis;
        count++;
    }

    /** The usual distance in ms; a cautious minute for a node that was heard only a few times. */
    long usualMillis() {
        long[] sorted = Arrays.copyOf(newest, Math.min(count, PACKS));
        Arrays.sort(sorted);
        long[] gaps = new long[Math.max(0, sorted.length - 1)];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = sorted[i + 1] - sorted[i];
        }
        if (gaps.length < ENOUGH) {
            return UNKNOWN_MILLIS;
        }
        Arrays.sort(gaps);
        return gaps[gaps.length / 2];
    }
}
