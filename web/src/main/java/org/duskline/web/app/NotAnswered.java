package org.duskline.web.app;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;
import org.duskline.analyzer.evening.Stop;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.web.deliver.Unanswered;
import org.duskline.web.page.board.Tonight;

/** The traps of tonight's round that nobody has answered for since the morning. Closed ones are not on the round. */
final class NotAnswered implements Supplier<List<Unanswered>> {
    /** An answer holds for the evening it was given before, not for the next one's. */
    private static final Duration SINCE_MORNING = Duration.ofHours(16);

    private final Supplier<Tonight> tonight;
    private final AnswerLog answers;

    NotAnswered(Supplier<Tonight> tonight, AnswerLog answers) {
        this.tonight = tonight;
        this.answers = answers;
    }

    @Override
    public List<Unanswered> get() {
        return tonight.get().sheet().round().stops().stream()
                .filter(stop -> !answered(stop))
                .map(stop -> new Unanswered(
                        stop.moveIn(),
                        stop.flightEnd().window().opens(),
                        stop.flightEnd().window().closes()))
                .toList();
    }

    private boolean answered(Stop stop) {
        Finding finding = stop.moveIn();
        Instant morning = stop.flightEnd().window().opens().minus(SINCE_MORNING);
        return answers.to(finding.trap(), finding.kind(), finding.onset()).stream()
                .anyMatch(answer -> !answer.at().isBefore(morning));
    }
}
