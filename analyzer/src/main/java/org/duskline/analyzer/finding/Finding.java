package org.duskline.analyzer.finding;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the analyser concluded at one trap. Its identity is trap, kind and onset, so that folding the same past again
 * never tells it twice.
 *
 * @param trap the trap's name
 * @param node the node it was seen with
 * @param kind what it is
 * @param onset when it began at the trap, in the samples' own time
 * @param raised receipt of the message that settled it
 * @param stage how far it has come
 * @param changed when the stage was last changed, by the clock of receipt
 * @param probability how sure, 0 to 1
 * @param summary one line in the keeper's words
 * @param evidence what it rests on, weightiest first
 * @param rivals probability of each explanation; sums to 1
 * @param size the swarm's size, for a move-in
 * @param thresholds version of the thresholds it was raised under
 */
public record Finding(
        String trap,
        String node,
        Kind kind,
        Instant onset,
        Instant raised,
        Stage stage,
        Instant changed,
        double probability,
        String summary,
        List<Evidence> evidence,
        Map<Rival, Double> rivals,
        Optional<SwarmSize> size,
        int thresholds) {

    public Finding {
        evidence = List.copyOf(evidence);
        rivals = Map.copyOf(rivals);
    }

    /** Whether it still stands. */
    public boolean standing() {
        return stage.stands();
    }
}
