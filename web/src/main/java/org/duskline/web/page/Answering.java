package org.duskline.web.page;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.Said;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;

/** Writes answers down, each once however often it is sent. "Closed" is a visit to the trap too. */
final class Answering {
    private final AnswerLog answers;
    private final VisitLog visits;

    Answering(AnswerLog answers, VisitLog visits) {
        this.answers = answers;
        this.visits = visits;
    }

    /**
     * Writes an answer down.
     *
     * @param by who gives it
     * @return whether it is new
     */
    boolean write(Finding finding, AnswerEntry entry, String by, Instant now) {
        boolean fresh = answers.marked(entry.mark()).isEmpty();
        for (Said said : entry.said()) {
            // No mark of a writer holds a "~"; the second half of an answer so has a mark of its own.
            String mark = said == entry.said().get(0) ? entry.mark() : entry.mark() + "~what";
            Answer answer =
                    new Answer(finding.trap(), finding.kind(), finding.onset(), said, entry.note(), entry.at(), by);
            keep(answers.marked(mark).orElse(answer), mark, now);
        }
        return fresh;
    }

    /** The visit goes first: should the machine die between the two, the answer is sent again and completes them. */
    private void keep(Answer answer, String mark, Instant now) {
        if (answer.said() == Said.CLOSED) {
            Visit closed = Visit.of(answer.trap(), VisitKind.CLOSED, answer.at(), answer.by());
            visits.record(closed, now, Optional.of("answer~" + mark));
        }
        answers.record(answer, Optional.of(mark));
    }

    List<Answer> given(Finding finding) {
        return answers.to(finding.trap(), finding.kind(), finding.onset());
    }
}
