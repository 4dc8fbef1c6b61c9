package org.duskline.collector.collect;

import java.util.EnumMap;
import java.util.Map;
import org.duskline.collector.store.Stored;
import org.duskline.collector.wire.DamageReason;

/** Counts up one batch. */
final class TallySheet {
    private long messages;
    private long samples;
    private long merged;
    private long repeats;
    private long moved;
    private long statuses;
    private long acknowledgements;
    private final Map<DamageReason, Long> rejected = new EnumMap<>(DamageReason.class);

    void message() {
        messages++;
    }

    void status() {
        statuses++;
    }

    void acknowledgement() {
        acknowledgements++;
    }

    void rejected(DamageReason reason) {
        rejected.merge(reason, 1L, Long::sum);
    }

    void repeats(int count) {
        repeats += count;
    }

    void stored(Stored stored) {
        samples += stored.added();
        merged += stored.merged();
        repeats += stored.repeats();
        moved += stored.moved();
    }

    Tally sum() {
        return new Tally(messages, samples, merged, repeats, moved, statuses, acknowledgements, rejected);
    }
}
