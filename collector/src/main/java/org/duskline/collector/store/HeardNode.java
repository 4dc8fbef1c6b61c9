package org.duskline.collector.store;

import java.time.Instant;
import java.util.Optional;
import org.duskline.collector.wire.Status;

/**
 * A node that was heard at least once.
 *
 * @param name the hardware's own name
 * @param firstHeard receipt of its first message
 * @param lastHeard receipt of its last message of any kind, readable or not
 * @param status what it, or its last will, said last; empty if it never said
 * @param statusSince receipt of that; empty if it never said
 */
public record HeardNode(
        String name, Instant firstHeard, Instant lastHeard, Optional<Status> status, Optional<Instant> statusSince) {}
