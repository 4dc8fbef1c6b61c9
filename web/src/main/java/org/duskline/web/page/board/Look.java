package org.duskline.web.page.board;

import org.duskline.collector.trap.Trap;

/**
 * What else needs a look: not to be closed, not to be forgotten.
 *
 * @param trap the trap
 * @param what what is seen there, in one sentence
 * @param settles what would settle it, in one sentence; may be empty
 */
public record Look(Trap trap, String what, String settles) {}
