package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.duskline.collector.store.HeardPack;

/** Tells from a node's last messages how it sends. */
final class NodePace {
    private NodePace() {}

    static Optional<NodeDetail.Pace> of(List<HeardPack> packs) {
        if (packs.isEmpty()) {
            return Optional.empty();
        }
        List<Duration> delays = packs.stream().map(HeardPack::delay).sorted().toList();
        List<Instant> receipts =
                packs.stream().map(HeardPack::received).sorted().toList();
        return Optional.of(new NodeDetail.Pace(
                delays.get(delays.size() / 2), delays.get(delays.size() - 1), usualDistance(receipts)));
    }

    /** The median distance of times in order; empty for fewer than two. */
    static Optional<Duration> usualDistance(List<Instant> times) {
        List<Duration> distances = new ArrayList<>();
        for (int i = 1; i < times.size(); i++) {
            distances.add(Duration.between(times.get(i - 1), times.get(i)));
        }
        return distances.isEmpty()
                ? Optional.empty()
                : Optional.of(distances.stream().sorted().toList().get(distances.size() / 2));
    }
}
