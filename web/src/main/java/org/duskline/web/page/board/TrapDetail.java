package org.duskline.web.page.board;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.KeptVisit;

/**
 * Everything a trap's own page shows beside its curve.
 *
 * @param now the instant it was looked at
 * @param link the connection to the broker
 * @param trap the trap as it is now
 * @param recordedFrom about when its first sample was taken; empty when it was never heard
 * @param findings all its findings, the last raised first
 * @param visits the keeper's visits that stand, the last first
 * @param due what is to be done there before long, each in one sentence
 */
public record TrapDetail(
        Instant now,
        BrokerLink link,
        TrapNow trap,
        Optional<Instant> recordedFrom,
        List<Finding> findings,
        List<KeptVisit> visits,
        List<String> due) {
    public TrapDetail {
        findings = List.copyOf(findings);
        visits = List.copyOf(visits);
        due = List.copyOf(due);
    }
}
