package org.duskline.analyzer.replay;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.duskline.analyzer.detect.Thresholds;

/**
 * A version of the thresholds.
 *
 * @param version counted from 1, the defaults
 * @param trap the one trap for which it is an exception; empty for the whole line
 * @param at in force from then on
 * @param until first moment at which an exception no longer holds
 * @param by who adopted it
 * @param why in the keeper's words
 * @param changed what it changed against what held before, in words
 * @param predicted what the replay foretold, in words; may be empty
 * @param backTo the version whose numbers it brought back
 */
public record Adopted(
        int version,
        Optional<String> trap,
        Thresholds thresholds,
        Instant at,
        Optional<Instant> until,
        String by,
        String why,
        List<String> changed,
        String predicted,
        OptionalInt backTo) {
    public Adopted {
        changed = List.copyOf(changed);
        if (by.isBlank() || why.isBlank()) {
            throw new IllegalArgumentException("Say who adopts the thresholds and why; whoever looks back will ask.");
        }
        if (until.isPresent() && !at.isBefore(until.get())) {
            throw new IllegalArgumentException("The exception for " + trap.orElse("the line") + " ends (" + until.get()
                    + ") before it begins (" + at + ").");
        }
    }

    boolean ofLine() {
        return trap.isEmpty();
    }

    boolean ended(Instant moment) {
        return until.filter(end -> !moment.isBefore(end)).isPresent();
    }
}
