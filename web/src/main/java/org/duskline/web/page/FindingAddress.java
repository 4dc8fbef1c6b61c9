package org.duskline.web.page;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.web.deliver.FindingName;

/**
 * A finding's name in an address: kind, onset and trap, such as {@code move-in~2026-05-12T11:04:00Z~Mill Race}. It stays
 * the same for as long as the finding is kept.
 */
public final class FindingAddress {
    private FindingAddress() {}

    /** The name, not yet encoded for an address. */
    public static String of(Finding finding) {
        return FindingName.of(finding);
    }

    /**
     * Finds what a name means.
     *
     * @throws NotHere when it means nothing that is kept
     */
    static Finding find(FindingLog log, String name) {
        return read(log, name)
                .orElseThrow(
                        () -> new NotHere("There is no finding \"" + name + "\". Open it from the list of alerts."));
    }

    private static Optional<Finding> read(FindingLog log, String name) {
        String[] parts = name.split("~", 3);
        if (parts.length < 3) {
            return Optional.empty();
        }
        try {
            Instant onset = Instant.parse(parts[1]);
            return Arrays.stream(Kind.values())
                    .filter(kind -> kind.wireName().equals(parts[0].toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .flatMap(kind -> log.find(parts[2], kind, onset));
        } catch (DateTimeException notATime) {
            return Optional.empty();
        }
    }
}
