package org.duskline.collector.store;

/** The stretch of time that a pack touches. */
final class Span {
    private long first = Long.MAX_VALUE;
    private long last = Long.MIN_VALUE;

    void include(long timeMillis) {
        first = Math.min(first, timeMillis);
        last = Math.max(last, timeMillis);
    }

    long first() {
        return first;
    }

    long last() {
        return last;
    }
}
