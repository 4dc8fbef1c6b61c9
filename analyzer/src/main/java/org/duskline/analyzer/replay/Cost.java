package org.duskline.analyzer.replay;

import java.util.List;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.visit.Answer;

/**
 * What mistakes cost, in whatever the keeper counts in; only their ratios matter.
 *
 * @param missedSwarm a swarm that was never told
 * @param wastedDrive a drive to a trap without one
 * @param hourOfDelay each hour from a swarm's onset until it is told
 */
public record Cost(double missedSwarm, double wastedDrive, double hourOfDelay) {
    public Cost {
        if (!(missedSwarm >= 0 && wastedDrive >= 0 && hourOfDelay >= 0)) {
            throw new IllegalArgumentException("A price must be 0 or more: missed swarm " + missedSwarm
                    + ", wasted drive " + wastedDrive + ", hour of delay " + hourOfDelay + ".");
        }
    }

    /** What so many hours of delay cost; never more than the swarm itself. */
    double late(double hours) {
        return Math.min(missedSwarm, hourOfDelay * Math.max(0, hours));
    }

    /** What an answered move-in costs when these are told: nothing if it was false and is not told. */
    public double of(Answer answer, List<Told> told) {
        for (Told one : told) {
            if (one.kind() == Kind.MOVE_IN
                    && one.trap().equals(answer.trap())
                    && Comparison.apart(one.onset(), answer.onset()).compareTo(Comparison.SAME_EVENT) <= 0) {
                return answer.said().deniesASwarm()
                        ? wastedDrive
                        : late(one.delay().toSeconds() / 3600.0);
            }
        }
        return answer.said().deniesASwarm() ? 0 : missedSwarm;
    }

    /** What alarms cost that nobody answered and that the program itself took back. */
    double ofWithdrawn(List<Told> told, List<Answer> answers) {
        return wastedDrive
                * told.stream()
                        .filter(one -> one.kind() == Kind.MOVE_IN && one.withdrawn())
                        .filter(one -> Comparison.truth(one, answers) == Comparison.Truth.UNANSWERED)
                        .count();
    }
}
