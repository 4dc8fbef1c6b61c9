package org.duskline.web.page.board;

import java.time.Instant;

/**
 * A node that was heard and hangs in no trap.
 *
 * @param node its own name
 * @param firstHeard receipt of its first message
 * @param lastHeard receipt of its last message
 */
public record LooseNode(String node, Instant firstHeard, Instant lastHeard) {}
