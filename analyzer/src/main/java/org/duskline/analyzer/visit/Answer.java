package org.duskline.analyzer.visit;

import java.time.Instant;
import org.duskline.analyzer.finding.Kind;

/**
 * What a keeper said to a finding.
 *
 * @param trap the trap's name
 * @param kind the finding's kind
 * @param onset the finding's onset; with trap and kind its identity
 * @param said the answer
 * @param note the keeper's own words; may be empty
 * @param at when it was given
 * @param by who gave it
 */
public record Answer(String trap, Kind kind, Instant onset, Said said, String note, Instant at, String by) {
    public Answer {
        if (trap.isBlank() || by.isBlank()) {
            throw new IllegalArgumentException("An answer needs the name of a trap and of who gave it.");
        }
    }
}
