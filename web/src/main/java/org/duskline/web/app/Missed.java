package org.duskline.web.app;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
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
    private final Function<Instant, List<Finding>> changedSince;
    private final InstantSource clock;
    private final List<Finding> found = new ArrayList<>();
    private Optional<Pulse.Gap> gap;
    private Optional<Instant> connectedSince = Optional.empty();

    /**
     * @param deliveries knows when nobody was watching, and tells it
     * @param packs how many messages of nodes are stored
     * @param changedSince what was found or changed from a moment on, for what an earlier start found and could not tell
     */
    Missed(
            Deliveries deliveries,
            LongSupplier packs,
            Function<Instant, List<Finding>> changedSince,
            InstantSource clock) {
        this.deliveries = deliveries;
        this.packs = packs;
        this.changedSince = changedSince;
        this.clock = clock;
        this.gap = deliveries.gap(packs.getAsLong());
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
            int read = Math.toIntExact(packs.getAsLong() - gap.get().packs());
            deliveries.tellMissed(gap.get(), read, all(gap.get()));
            gap = Optional.empty();
            found.clear();
        }
    }

    private List<Finding> all(Pulse.Gap missed) {
        Map<List<Object>, Finding> each = new LinkedHashMap<>();
        changedSince.apply(missed.from()).forEach(finding -> each.put(identity(finding), finding));
        found.forEach(finding -> each.put(identity(finding), finding));
        return List.copyOf(each.values());
    }

    private static List<Object> identity(Finding finding) {
        return List.of(finding.trap(), finding.kind(), finding.onset());
    }
}
