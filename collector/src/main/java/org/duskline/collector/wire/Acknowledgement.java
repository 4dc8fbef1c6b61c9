package org.duskline.collector.wire;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What a node says of its settings on {@code <root>/<node>/settings/ack}: what is in force there now, whether or not the
 * last settings were refused. Apart from the revision a node may leave anything out.
 *
 * @param revision the last revision in force; 0 if none ever was
 * @param periodSeconds time between samples in quiet hours
 * @param quickPeriodSeconds time between samples in quick mode
 * @param quick when it is quick
 * @param quickNow whether it is quick now
 * @param tare number of the last tare carried out, or taken as the number to begin with
 * @param zeroCounts converter counts at zero weight
 * @param lanes lanes of its entrance counter
 * @param faultyLanes of these, how many are blocked, dirty, dazzled or flicker
 * @param waitingSamples samples that it has yet to send
 * @param clockSeconds its clock, Unix seconds; empty for a node without one
 * @param refused what it found fault with: the name of a setting, or {@code payload}; empty where nothing was refused
 */
public record Acknowledgement(
        long revision,
        OptionalLong periodSeconds,
        OptionalLong quickPeriodSeconds,
        Optional<QuickMode> quick,
        Optional<Boolean> quickNow,
        OptionalLong tare,
        OptionalLong zeroCounts,
        OptionalLong lanes,
        OptionalLong faultyLanes,
        OptionalLong waitingSamples,
        OptionalLong clockSeconds,
        Optional<String> refused) {
    /** Longer words from a node are cut; none of the known names comes near. */
    private static final int LONGEST_WORDS = 80;

    /** Reads the payload: a SenML pack in which the part of a name behind its last {@code :} or {@code /} counts. */
    public static Acknowledgement decode(byte[] payload) throws UnreadableMessage {
        Map<String, SenmlRecord> said = new HashMap<>();
        for (SenmlRecord record : SenmlPack.decode(payload)) {
            String name = record.name();
            said.put(name.substring(Math.max(name.lastIndexOf(':'), name.lastIndexOf('/')) + 1), record);
        }
        OptionalLong revision = whole(said, "rev");
        if (revision.isEmpty()) {
            throw new UnreadableMessage(
                    DamageReason.NO_QUANTITY, "An acknowledgement of settings needs rev, a whole number from 0.");
        }
        return new Acknowledgement(
                revision.getAsLong(),
                whole(said, "period"),
                whole(said, "quick-period"),
                words(said, "quick").flatMap(QuickMode::named),
                words(said, "quick-now").map(Boolean::parseBoolean),
                whole(said, "tare"),
                signed(said, "zero"),
                whole(said, "lanes"),
                whole(said, "lanes-faulty"),
                whole(said, "stored"),
                whole(said, "clock"),
                words(said, "refused"));
    }

    private static OptionalLong whole(Map<String, SenmlRecord> said, String name) {
        OptionalLong number = signed(said, name);
        return number.isPresent() && number.getAsLong() < 0 ? OptionalLong.empty() : number;
    }

    private static OptionalLong signed(Map<String, SenmlRecord> said, String name) {
        SenmlRecord record = said.get(name);
        boolean number = record != null && record.kind() == SenmlRecord.ValueKind.NUMBER;
        return number && record.value() == Math.rint(record.value()) && Math.abs(record.value()) < 1L << 53
                ? OptionalLong.of((long) record.value())
                : OptionalLong.empty();
    }

    private static Optional<String> words(Map<String, SenmlRecord> said, String name) {
        return Optional.ofNullable(said.get(name))
                .map(SenmlRecord::text)
                .filter(text -> !text.isEmpty())
                .map(text -> text.substring(0, Math.min(text.length(), LONGEST_WORDS)));
    }

    /** When a node samples quickly. */
    public enum QuickMode {
        /** When weight or traffic moves. */
        AUTO,
        ON,
        OFF;

        /** The word on the wire. */
        public String wireName() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** The mode of that word; empty for any other word. */
        public static Optional<QuickMode> named(String word) {
            for (QuickMode mode : values()) {
                if (mode.wireName().equals(word)) {
                    return Optional.of(mode);
                }
            }
            return Optional.empty();
        }
    }
}
