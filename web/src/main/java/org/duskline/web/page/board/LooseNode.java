package org.duskline.web.page.board;

import java.time.Instant;

/**
 * A node that was heard and hangs in no trap.
 *
 * @param node its own name
 * @param lastHeard receipt of its last message
 * @param samples how many of its samples are stored
 */
public record LooseNode(String node, Instant lastHeard, long samples) {}
