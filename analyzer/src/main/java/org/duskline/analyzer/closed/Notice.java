package org.duskline.analyzer.closed;

import java.time.Instant;
import java.util.Optional;
import org.duskline.analyzer.finding.Kind;

/**
 * What a rule found.
 *
 * @param what which rule
 * @param onset when it began at the trap
 * @param raised receipt of the sample that settled it, or the moment asked about
 * @param said one line in the keeper's words, with numbers
 */
public record Notice(What what, Instant onset, Instant raised, String said) {
    /** The rules. */
    public enum What {
        LEAKING(Kind.LEAKING, false),
        OVERHEATING(Kind.OVERHEATING, true),
        NOT_FETCHED(null, false),
        GONE(Kind.GONE, false);

        private final Kind kind;
        private final boolean wakes;

        What(Kind kind, boolean wakes) {
            this.kind = kind;
            this.wakes = wakes;
        }

        /** The finding it makes; empty for a mere reminder. */
        public Optional<Kind> kind() {
            return Optional.ofNullable(kind);
        }

        /** Whether it is told at once, whatever the quiet hours. */
        public boolean wakesSomebody() {
            return wakes;
        }
    }
}
