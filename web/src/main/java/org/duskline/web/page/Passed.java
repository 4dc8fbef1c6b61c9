package org.duskline.web.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.detect.Crossings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Rival;
import org.duskline.analyzer.replay.Dial;
import org.duskline.collector.trap.Fitted;

/**
 * A threshold that stood before a finding, and how it was passed.
 *
 * @param threshold its name, as on the page on which it is turned
 * @param found what there was, with its unit
 * @param needed what the threshold asked for, with its unit
 * @param margin by how much it was passed, or that it was not
 */
public record Passed(String threshold, String found, String needed, String margin) {
    private static final double MOST_ODDS = 1_000_000;

    /**
     * The thresholds that bear on a finding; none where its kind has none to turn.
     *
     * @param thresholds those that it was raised under
     * @param fitted what is fitted to the trap: without a scale nothing is weighed
     */
    static List<Passed> of(Finding finding, Thresholds thresholds, Fitted fitted) {
        List<Passed> passed = new ArrayList<>();
        if (finding.kind() == Kind.MOVE_IN || finding.kind() == Kind.DEPARTURE) {
            passed.add(odds(asRaised(finding), thresholds.moveInOdds()));
        }
        if (finding.kind() == Kind.MOVE_IN && fitted.hasScale()) {
            finding.size().ifPresent(size -> passed.add(weight(size.kg(), thresholds.smallestSwarmKg())));
        }
        if (finding.kind() == Kind.SCOUTING) {
            Crossings.perMinute(finding.evidence()).ifPresent(rate -> passed.add(rate(Dial.SCOUTS, rate, thresholds)));
        }
        // Without a scale robbers are told at a multiple of the threshold alone.
        if (finding.kind() == Kind.ROBBING && fitted.hasScale()) {
            Crossings.perMinute(finding.evidence()).ifPresent(rate -> passed.add(rate(Dial.ROBBERS, rate, thresholds)));
        }
        return passed;
    }

    /** How sure it was when it was raised: the odds of its rivals are kept from then. */
    static double asRaised(Finding finding) {
        Optional<Rival> itself = switch (finding.kind()) {
            case MOVE_IN -> Optional.of(Rival.SWARM);
            case SCOUTING -> Optional.of(Rival.SCOUTS);
            case ROBBING -> Optional.of(Rival.ROBBERS);
            default -> Optional.empty();
        };
        return itself.map(finding.rivals()::get).orElse(finding.probability());
    }

    private static Passed odds(double probability, double needed) {
        double odds = Math.min(MOST_ODDS, probability / Math.max(1 - probability, 1e-9));
        double times = odds / needed;
        String found = odds >= MOST_ODDS ? "more than a million to 1" : toOne(odds);
        String margin = times >= 1 ? timesWords(times) + " what was asked" : "not reached";
        return new Passed(Dial.MOVE_IN_ODDS.label(), found, toOne(needed), margin);
    }

    private static Passed weight(double kg, double least) {
        String margin = kg >= least
                ? Words.kg(kg - least) + " kg over"
                : Words.kg(least - kg) + " kg under; the rest of the evidence made up for it";
        return new Passed(Dial.SWARM_KG.label(), Words.kg(kg) + " kg", Dial.SWARM_KG.said(least), margin);
    }

    private static Passed rate(Dial dial, double perMinute, Thresholds thresholds) {
        double least = dial.of(thresholds);
        String margin = perMinute >= least
                ? Words.perMinute(perMinute - least) + " a minute over"
                : Words.perMinute(least - perMinute) + " a minute under";
        return new Passed(dial.label(), Words.perMinute(perMinute) + " a minute", dial.said(least), margin);
    }

    private static String toOne(double odds) {
        return String.format(Locale.ENGLISH, "%,.0f to 1", odds);
    }

    private static String timesWords(double times) {
        return String.format(Locale.ENGLISH, times < 10 ? "%.1f times" : "%,.0f times", times);
    }
}
