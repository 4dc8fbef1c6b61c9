package org.duskline.analyzer.outbox;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.finding.SwarmSize;

/** The parts of a finding that no query asks for, as one JSON text. */
record Details(List<Evidence> evidence, Map<Rival, Double> rivals, Optional<SwarmSize> size) {
    private static final ObjectMapper JSON = new ObjectMapper();

    private record Kept(List<Evidence> evidence, Map<Rival, Double> rivals, SwarmSize size) {}

    static String write(Finding finding) {
        try {
            return JSON.writeValueAsString(new Kept(
                    finding.evidence(), finding.rivals(), finding.size().orElse(null)));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("The details of a finding at " + finding.trap() + " cannot be written.", e);
        }
    }

    static Details read(String text) {
        try {
            Kept kept = JSON.readValue(text, Kept.class);
            return new Details(kept.evidence(), kept.rivals(), Optional.ofNullable(kept.size()));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("The details of a stored finding are damaged: " + text, e);
        }
    }
}
