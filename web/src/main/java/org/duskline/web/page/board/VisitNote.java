package org.duskline.web.page.board;

import java.time.Instant;

/**
 * What the keeper recorded at a trap.
 *
 * @param at when it was done
 * @param what what was done, in the trade's word: baited, looked, closed, collected, ...
 * @param note the keeper's own words; may be empty
 */
public record VisitNote(Instant at, String what, String note) {}
