package org.duskline.web.page.board;

import java.util.List;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.Answer;

/**
 * What was answered to some findings.
 *
 * @param given by onset and time; may hold answers to others too
 */
public record Answers(List<Answer> given) {
    public static final Answers NONE = new Answers(List.of());

    public Answers {
        given = List.copyOf(given);
    }

    /** The answers to a finding, first to last. */
    public List<Answer> to(Finding finding) {
        return given.stream()
                .filter(answer -> answer.trap().equals(finding.trap())
                        && answer.kind() == finding.kind()
                        && answer.onset().toEpochMilli() == finding.onset().toEpochMilli())
                .toList();
    }
}
