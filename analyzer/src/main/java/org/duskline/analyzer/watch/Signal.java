package org.duskline.analyzer.watch;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.finding.SwarmSize;

/**
 * What one fold of a trap's past says at one sample. Folding again says it again; only the ledger knows what is new.
 *
 * @param kind what it is
 * @param stage how far it has come
 * @param onsetMillis when it began
 * @param atMillis time of the sample that showed it
 * @param probability how sure, 0 to 1
 * @param summary one line in the keeper's words
 * @param evidence what it rests on
 * @param rivals probability of each explanation
 * @param size the swarm's size, for a move-in
 */
record Signal(
        Kind kind,
        Stage stage,
        long onsetMillis,
        long atMillis,
        double probability,
        String summary,
        List<Evidence> evidence,
        Map<Rival, Double> rivals,
        Optional<SwarmSize> size) {
    private static final double WITHDRAWN_PROBABILITY = 0.05;

    static Signal plain(Kind kind, Stage stage, long onsetMillis, long atMillis, String summary) {
        return new Signal(kind, stage, onsetMillis, atMillis, 1, summary, List.of(), Map.of(), Optional.empty());
    }

    /** What undoes a finding that was told. */
    static Signal withdrawn(Finding finding, String summary) {
        long onset = finding.onset().toEpochMilli();
        return new Signal(
                finding.kind(),
                Stage.WITHDRAWN,
                onset,
                onset,
                WITHDRAWN_PROBABILITY,
                summary,
                List.of(),
                Map.of(),
                Optional.empty());
    }
}
