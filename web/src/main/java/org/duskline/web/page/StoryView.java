package org.duskline.web.page;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog.Step;
import org.duskline.analyzer.replay.Adopted;
import org.duskline.analyzer.visit.Answer;

/**
 * The story of a finding: what was said, what it rested on, what it had to pass, and what came of it.
 *
 * @param finding as it stands
 * @param zone in which hours are told
 * @param now the instant it was told
 * @param steps the stages it went through, first to last
 * @param passed the thresholds before it
 * @param version the thresholds it was raised under; empty where that version is not kept
 * @param answers what was answered, first to last
 * @param strip the curve around its onset
 */
public record StoryView(
        Finding finding,
        ZoneId zone,
        Instant now,
        List<Step> steps,
        List<Passed> passed,
        Optional<Adopted> version,
        List<Answer> answers,
        Strip strip) {
    public StoryView {
        steps = List.copyOf(steps);
        passed = List.copyOf(passed);
        answers = List.copyOf(answers);
    }

    /** The evidence in the order of its weight, for and against mixed. */
    public List<Weighed> weighed() {
        return Weighed.of(finding.evidence());
    }

    /** How it stood before anything was measured; empty where the odds that it was told at are not kept. */
    public Optional<String> before() {
        double raised = Passed.asRaised(finding);
        boolean kept = finding.kind() != Kind.DEPARTURE && !finding.rivals().isEmpty();
        return !kept ? Optional.empty() : WhyText.before(raised / (1 - raised), finding.evidence());
    }

    /** "7 pieces speak for it, 2 against." */
    public String balance() {
        long against = weighed().stream().filter(Weighed::against).count();
        long speaking = finding.evidence().size() - against;
        return Words.count(speaking, "piece speaks", "pieces speak") + " for it, "
                + (against == 0 ? "none" : String.valueOf(against)) + " against.";
    }

    /** What was said when it was raised. */
    public String saidFirst() {
        return steps.isEmpty() ? finding.summary() : steps.get(0).summary();
    }

    /** The last stage, where it has come further than being raised. */
    public Optional<Step> last() {
        return steps.size() > 1 ? Optional.of(steps.get(steps.size() - 1)) : Optional.empty();
    }

    /** Where other thresholds are tried on it; empty for what has none to turn. */
    public Optional<String> tuning() {
        return switch (finding.kind()) {
            case MOVE_IN, SCOUTING, ROBBING, DEPARTURE -> Optional.of(Links.tuning(finding));
            default -> Optional.empty();
        };
    }

    public boolean sized() {
        return finding.kind() == Kind.MOVE_IN && finding.size().isPresent();
    }
}
