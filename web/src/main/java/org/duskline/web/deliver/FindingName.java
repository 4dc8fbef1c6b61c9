package org.duskline.web.deliver;

import org.duskline.analyzer.finding.Finding;

/** A finding's name in messages and addresses: kind, onset and trap, such as {@code move-in~2026-05-12T11:04:00Z~Mill Race}. */
public final class FindingName {
    private FindingName() {}

    /** The name, not yet encoded for an address. */
    public static String of(Finding finding) {
        return finding.kind().wireName() + "~" + finding.onset() + "~" + finding.trap();
    }
}
