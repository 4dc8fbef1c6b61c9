package org.duskline.web.tuning;

import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.replay.ThresholdBook;

/**
 * Other thresholds that somebody wants tried.
 *
 * @param thresholds the numbers
 * @param trap the one trap that they are for; empty for the line, of which traps with an exception keep it
 * @param loaded the finding that started it, whose stretch is replayed first
 */
public record Wish(Thresholds thresholds, Optional<String> trap, Optional<Finding> loaded) {
    Function<String, Thresholds> under(ThresholdBook book, Instant at) {
        return name -> {
            boolean meant = trap.map(name::equals)
                    .orElseGet(() -> book.exception(name, at).isEmpty());
            return meant ? thresholds : book.inForce(name, at).thresholds();
        };
    }
}
