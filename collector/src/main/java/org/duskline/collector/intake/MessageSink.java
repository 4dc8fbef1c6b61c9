package org.duskline.collector.intake;

import java.util.List;
import org.duskline.collector.wire.Message;

/** Takes messages in order of receipt. */
@FunctionalInterface
public interface MessageSink {
    /**
     * Takes a batch. Returns only when every message of it is durable, decoded or kept as damage; a source acknowledges
     * to its broker after that and not before.
     */
    void take(List<Message> batch);
}
