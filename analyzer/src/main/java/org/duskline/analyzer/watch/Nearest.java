package org.duskline.analyzer.watch;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Kind;

/**
 * How near a stretch of a trap's past came to a kind of finding.
 *
 * @param kind the kind
 * @param at the moment that came nearest; empty where at no moment there was anything to weigh
 * @param odds how likely it was then, to one; NaN where there was nothing to weigh
 * @param needed the odds from which on it is told, to one
 * @param evidence what spoke for it and against at that moment, weightiest first
 * @param heldBack what held it back, in the keeper's words; that it was told, where it was
 */
public record Nearest(
        Kind kind, Optional<Instant> at, double odds, double needed, List<Evidence> evidence, String heldBack) {
    public Nearest {
        evidence = List.copyOf(evidence);
    }
}
