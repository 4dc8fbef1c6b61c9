package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.duskline.analyzer.drift.ScaleDrift;
import org.duskline.collector.store.Store;
import org.duskline.collector.wire.Sample;

/**
 * What each node's scale does with temperature, learned from the three weeks before a moment and kept for a while, since a
 * cell changes by the year and a page is looked at by the second.
 */
final class StoredDrift {
    private static final Duration LEARNED_FROM = Duration.ofDays(21);
    private static final Duration KEPT = Duration.ofHours(6);

    private record Learned(long stretch, Optional<ScaleDrift> drift) {}

    private final Store store;
    private final Map<String, Learned> learned = new ConcurrentHashMap<>();

    StoredDrift(Store store) {
        this.store = store;
    }

    /** Empty where too little was measured before that moment to tell. */
    Optional<ScaleDrift> of(String node, Instant until) {
        long stretch = until.getEpochSecond() / KEPT.toSeconds();
        return learned.compute(
                        node,
                        (name, before) -> before != null && before.stretch() == stretch
                                ? before
                                : new Learned(stretch, learn(node, until)))
                .drift();
    }

    private Optional<ScaleDrift> learn(String node, Instant until) {
        List<Sample> samples = new ArrayList<>();
        store.samples().read(node, until.minus(LEARNED_FROM), until, samples::add);
        return ScaleDrift.of(samples);
    }
}
