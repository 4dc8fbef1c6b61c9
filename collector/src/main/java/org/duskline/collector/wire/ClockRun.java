package org.duskline.collector.wire;

/**
 * A stretch over which a node's wrong clock ran without being set: from a start of the node to the next, as a rule.
 * Over it the true time is the node's stamp plus a constant.
 *
 * @param id the store's number for it; 0 until stored
 * @param boot how often the node had started; -1 when it doesn't say
 * @param seq the newest pack number seen; -1 when it doesn't say
 * @param firstSeconds oldest stamp seen, seconds by the node's clock
 * @param newestSeconds newest stamp seen, seconds by the node's clock
 * @param offsetMillis the constant: the least of (receipt - stamp) over the packs so far, since no message comes before
 *     its samples were taken; ms
 */
public record ClockRun(long id, long boot, long seq, double firstSeconds, double newestSeconds, long offsetMillis) {
    /** When the newest sample so far was taken, Unix ms. */
    long newestMillis() {
        return offsetMillis + Math.round(newestSeconds * 1000);
    }

    /** The same run under the number that the store gave it. */
    public ClockRun numbered(long storedId) {
        return new ClockRun(storedId, boot, seq, firstSeconds, newestSeconds, offsetMillis);
    }
}
