package org.duskline.collector.store;

import java.time.Instant;
import java.util.List;
import org.duskline.collector.wire.Sample;

/**
 * The samples that one message brought, in time order; beside them earlier ones that it completed, or whose times it put
 * right, which keep their own receipt.
 *
 * @param pack the message's number in the order of storing; the reader's cursor
 * @param node the node that sent it
 * @param received when it reached us
 * @param samples at least one, in time order; repeats are left out
 */
public record Arrival(long pack, String node, Instant received, List<Sample> samples) {
    public Arrival {
        samples = List.copyOf(samples);
    }
}
