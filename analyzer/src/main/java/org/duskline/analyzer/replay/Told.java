package org.duskline.analyzer.replay;

import java.time.Duration;
import java.time.Instant;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;

/**
 * A finding as a replay told it.
 *
 * @param first as it was first said
 * @param last as it stood at the replay's end
 */
public record Told(Finding first, Finding last) {
    public String trap() {
        return first.trap();
    }

    public Kind kind() {
        return first.kind();
    }

    public Instant onset() {
        return first.onset();
    }

    /** From the onset to the message that settled it. */
    public Duration delay() {
        return Duration.between(first.onset(), first.raised());
    }

    /** Whether the program itself took it back. */
    public boolean withdrawn() {
        return last.stage() == Stage.WITHDRAWN;
    }
}
