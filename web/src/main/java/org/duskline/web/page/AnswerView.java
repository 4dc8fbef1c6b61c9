package org.duskline.web.page;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.Said;

/**
 * The page on which somebody answers a finding.
 *
 * @param finding what is answered
 * @param zone the zone that its hours are told in
 * @param given what was answered so far, first to last
 * @param mark a fresh mark for this answer
 * @param link the signed text by which somebody outside came here; empty for somebody inside
 * @param name the name under which the answer is kept
 * @param note what stands in the note
 * @param complaint what was wrong with the last try; may be empty
 * @param now the instant the page was made
 */
public record AnswerView(
        Finding finding,
        ZoneId zone,
        List<Answer> given,
        String mark,
        Optional<String> link,
        String name,
        String note,
        String complaint,
        Instant now) {
    public AnswerView {
        given = List.copyOf(given);
    }

    /** Whereto the form goes: by a link for that finding alone. */
    public String action() {
        return link.isPresent() ? "/answer" : "/answers";
    }

    /** The finding's name in the form. */
    public String address() {
        return FindingAddress.of(finding);
    }

    public List<Said> progress() {
        return AnswerChoices.progress(finding.kind());
    }

    public List<Said> verdicts() {
        return AnswerChoices.verdicts(finding.kind());
    }

    /** What it was, by the latest answer that says so. */
    public Optional<Said> verdict() {
        return given.stream().map(Answer::said).filter(Said::isVerdict).reduce((earlier, later) -> later);
    }

    /** Where a keeper whom a finding deceived sees which evidence did it; only for somebody inside. */
    public Optional<String> learn() {
        return verdict()
                .filter(is -> link.isEmpty() && finding.kind() == Kind.MOVE_IN && is.deniesASwarm())
                .map(is -> Links.tuning(finding));
    }
}
