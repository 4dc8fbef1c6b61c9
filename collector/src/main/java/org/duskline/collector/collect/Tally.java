package org.duskline.collector.collect;

import java.util.EnumMap;
import java.util.Map;
import org.duskline.collector.wire.DamageReason;

/**
 * What became of the messages taken so far.
 *
 * @param messages all of them
 * @param samples stored as new
 * @param merged added to what was known of the same instant
 * @param repeats samples that were known already
 * @param moved samples that found their right time later, when a wrong clock was understood
 * @param statuses online and offline announcements
 * @param acknowledgements what nodes said of their settings
 * @param rejected messages that could not be decoded, by reason; damage that is kept already counts again
 */
public record Tally(
        long messages,
        long samples,
        long merged,
        long repeats,
        long moved,
        long statuses,
        long acknowledgements,
        Map<DamageReason, Long> rejected) {

    /** Nothing taken yet. */
    public static final Tally NONE = new Tally(0, 0, 0, 0, 0, 0, 0, Map.of());

    public Tally {
        rejected = Map.copyOf(rejected);
    }

    /** How many could not be decoded, for whatever reason. */
    public long rejectedInAll() {
        return rejected.values().stream().mapToLong(Long::longValue).sum();
    }

    /** The two together. */
    public Tally plus(Tally other) {
        Map<DamageReason, Long> reasons = new EnumMap<>(DamageReason.class);
        reasons.putAll(rejected);
        other.rejected.forEach((reason, count) -> reasons.merge(reason, count, Long::sum));
        return new Tally(
                messages + other.messages,
                samples + other.samples,
                merged + other.merged,
                repeats + other.repeats,
                moved + other.moved,
                statuses + other.statuses,
                acknowledgements + other.acknowledgements,
                reasons);
    }
}
