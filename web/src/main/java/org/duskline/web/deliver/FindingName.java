package org.duskline.web.deliver;

import java.time.Instant;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;

/** A finding's name in messages and addresses: kind, onset and trap, such as {@code move-in~2026-05-12T11:04:00Z~Mill Race}. */
public final class FindingName {
    private FindingName() {}

    /** The name, not yet encoded for an address. */
    public static String of(Finding finding) {
        return of(finding.kind(), finding.onset(), finding.trap());
    }

    static String of(Kind kind, Instant onset, String trap) {
        return kind.wireName() + "~" + onset + "~" + trap;
    }
}
