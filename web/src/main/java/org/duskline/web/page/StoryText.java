package org.duskline.web.page;

import java.util.Locale;
import java.util.Map;
import java.util.StringJoiner;
import org.duskline.analyzer.finding.Rival;

/** The story of a finding as plain text, with the same numbers as the page. */
final class StoryText {
    private final StoryView story;
    private final StringJoiner lines = new StringJoiner("\n", "", "\n");

    private StoryText(StoryView story) {
        this.story = story;
    }

    static String of(StoryView story) {
        return new StoryText(story).text();
    }

    private String text() {
        var finding = story.finding();
        lines.add(finding.trap() + ": " + Words.kind(finding.kind()));
        lines.add("Began " + Words.moment(finding.onset(), story.now(), story.zone()) + ", told "
                + Words.moment(finding.raised(), story.now(), story.zone()) + ". " + Words.stage(finding.stage()) + ", "
                + Words.certainty(finding.probability()) + ", " + Words.percent(finding.probability()) + ".");
        lines.add("Said: " + story.saidFirst());
        if (story.sized()) {
            lines.add("Size: " + Words.size(finding));
        }
        evidence();
        thresholds();
        rivals();
        went();
        answers();
        lines.add("");
        lines.add("Curve: " + story.strip().words());
        return lines.toString();
    }

    private void evidence() {
        if (story.weighed().isEmpty()) {
            return;
        }
        title("What it rests on (nats, weightiest first)");
        story.weighed()
                .forEach(one -> lines.add(String.format(
                        Locale.ROOT,
                        "%+6.1f  %s",
                        one.piece().logOdds(),
                        one.piece().said())));
        story.before().ifPresent(odds -> lines.add("Before anything was measured: " + odds + "."));
    }

    private void thresholds() {
        if (!story.passed().isEmpty()) {
            title("What it had to pass");
            story.passed()
                    .forEach(one -> lines.add("- " + one.threshold() + ": " + one.found() + ", asked " + one.needed()
                            + "; " + one.margin()));
            story.version()
                    .ifPresent(adopted -> lines.add("Version " + adopted.version() + " of the thresholds, adopted by "
                            + adopted.by() + ": " + adopted.why()));
        }
    }

    private void rivals() {
        if (!story.finding().rivals().isEmpty()) {
            title("What it may have been, as it stood when it was told");
            for (Map.Entry<Rival, Double> rival : Words.rivals(story.finding())) {
                lines.add("- " + Words.rival(rival.getKey()) + " " + Words.percent(rival.getValue()));
            }
        }
    }

    private void went() {
        if (!story.steps().isEmpty()) {
            title("How it went on");
            story.steps()
                    .forEach(step -> lines.add("- " + Words.moment(step.at(), story.now(), story.zone()) + " "
                            + Words.stage(step.stage()) + ": " + step.summary()));
        }
    }

    private void answers() {
        title("What was answered");
        if (story.answers().isEmpty()) {
            lines.add("- nothing yet");
        }
        story.answers()
                .forEach(answer -> lines.add("- " + Words.moment(answer.at(), story.now(), story.zone()) + " "
                        + AnswerChoices.told(answer.by(), answer.said())
                        + (answer.note().isEmpty() ? "" : ": " + answer.note())));
    }

    private void title(String words) {
        lines.add("");
        lines.add(words);
    }
}
