package org.duskline.web.app;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.duskline.analyzer.finding.Finding;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.deliver.Pulse;

/**
 * After a start that follows a time of nobody watching, counts what has been read since, and has it told once the broker
 * has had time to hand over what it kept. One thread.
 */
final class Missed {
    /** A broker hands over what it kept at thousands of messages a second; nodes that stored need a moment more. */
    static final Duration HANDING_OVER = Duration.ofMinutes(2);

    private final Deliveries deliveries;
    private final LongSupplier packs;
    private final InstantSource clock;
    private final long packsBefore;
    private final List<Finding> found = new ArrayList<>();
    private Optional<Pulse.Gap> gap;
    private Optional<Instant> connectedSince = Optional.empty();

    /**
     * @param gap when nobody was watching; none if there is nothing to tell
     * @param packs how many messages of nodes are stored
     */
    Missed(Optional<Pulse.Gap> gap, Deliveries deliveries, LongSupplier packs, InstantSource clock) {
        this.gap = gap;
        this.deliveries = deliveries;
        this.packs = packs;
        this.clock = clock;
        this.packsBefore = packs.getAsLong();
    }

    /** After each look at what has arrived. */
    void looked(List<Finding> changes, boolean connected) {
        if (gap.isEmpty()) {
            return;
        }
        found.addAll(changes);
        Instant now = clock.instant();
        connectedSince = connected ? connectedSince.or(() -> Optional.of(now)) : Optional.empty();
        boolean handedOver = connectedSince
                .filter(since -> !since.plus(HANDING_OVER).isAfter(now))
                .isPresent();
        if (handedOver) {
            deliveries.tellMissed(gap.get(), Math.toIntExact(packs.getAsLong() - packsBefore), found);
            gap = Optional.empty();
            found.clear();
        }
    }
}
