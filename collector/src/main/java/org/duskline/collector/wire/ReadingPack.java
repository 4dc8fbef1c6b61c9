package org.duskline.collector.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The readings of one message by quantity and instant, times still by the node's own clock. */
public final class ReadingPack {
    private static final double MILLISECONDS_FROM = 1e11;

    private final List<RawSample> samples;
    private final long boot;
    private final long seq;

    private ReadingPack(List<RawSample> samples, long boot, long seq) {
        this.samples = samples;
        this.boot = boot;
        this.seq = seq;
    }

    /** Decodes a payload, JSON or CBOR. */
    public static ReadingPack decode(byte[] payload) throws UnreadableMessage {
        return of(SenmlPack.decode(payload));
    }

    static ReadingPack of(List<SenmlRecord> records) throws UnreadableMessage {
        List<RawSample> samples = new ArrayList<>();
        for (SenmlRecord record : records) {
            Quantity quantity = Quantity.of(record.name());
            if (quantity != null) {
                double value = Units.toOwn(quantity, record.unit(), record.value());
                sampleFor(samples, secondsOf(record), quantity, value).set(quantity, value);
            }
        }
        return numbered(samples, records.size());
    }

    private static double secondsOf(SenmlRecord record) throws UnreadableMessage {
        double seconds = record.seconds();
        // Boards whose language counts milliseconds send those; no second count gets there for three thousand years.
        double own = seconds >= MILLISECONDS_FROM ? seconds / 1000 : seconds;
        if (Math.abs(own) >= MILLISECONDS_FROM) {
            throw new UnreadableMessage(DamageReason.TIME, "A record states the time " + seconds + " s.");
        }
        return own;
    }

    private static RawSample sampleFor(List<RawSample> samples, double seconds, Quantity quantity, double value) {
        // From the end, because the records of one instant nearly always stand together.
        for (int i = samples.size() - 1; i >= 0; i--) {
            RawSample sample = samples.get(i);
            if (sample.seconds() == seconds && sample.takes(quantity, value)) {
                return sample;
            }
        }
        RawSample sample = new RawSample(seconds);
        samples.add(sample);
        return sample;
    }

    private static ReadingPack numbered(List<RawSample> all, int records) throws UnreadableMessage {
        long boot = -1;
        long seq = -1;
        List<RawSample> measuring = new ArrayList<>(all.size());
        for (RawSample sample : all) {
            boot = sample.boot() >= 0 ? sample.boot() : boot;
            seq = sample.seq() >= 0 ? sample.seq() : seq;
            if (sample.measures()) {
                measuring.add(sample);
            }
        }
        if (measuring.isEmpty()) {
            throw new UnreadableMessage(
                    DamageReason.NO_QUANTITY,
                    "None of its " + records + " records measures a quantity that is known here.");
        }
        measuring.sort(Comparator.comparingDouble(RawSample::seconds));
        for (RawSample sample : measuring) {
            sample.number(boot, seq);
        }
        return new ReadingPack(List.copyOf(measuring), boot, seq);
    }

    List<RawSample> samples() {
        return samples;
    }

    /** How many samples it holds. */
    public int size() {
        return samples.size();
    }

    /** How often the node has started; -1 when not sent. */
    public long boot() {
        return boot;
    }

    /** The pack's number since the node started; -1 when not sent. */
    public long seq() {
        return seq;
    }

    /** The newest stamp by the node's own clock, in seconds as sent. */
    public double newestSeconds() {
        return samples.get(samples.size() - 1).seconds();
    }

    /** Whether boot and seq are both sent, so that they name the pack among all packs of its node. */
    public boolean isNumbered() {
        return boot >= 0 && seq >= 0;
    }

    /** Whether every stamp is absolute, so that two packs with the same stamps tell of the same instants. */
    public boolean isAbsolute() {
        return samples.get(0).isAbsolute();
    }

    /**
     * A 64-bit digest (FNV-1a over the values' bits) that a second delivery of the pack has too. Stamps are part of it,
     * except where boot and seq name the pack and the stamps are relative: a node that sends such a pack again an hour
     * later states other ages for the same samples.
     */
    public long digest() {
        boolean stamped = isAbsolute() || !isNumbered();
        long digest = mix(mix(0xcbf29ce484222325L, boot), seq);
        for (RawSample sample : samples) {
            if (stamped) {
                digest = mix(digest, Double.doubleToLongBits(sample.seconds()));
            }
            for (int i = 0; i < Quantity.VALUES; i++) {
                digest = mix(digest, Double.doubleToLongBits(sample.value(i)));
            }
        }
        return digest;
    }

    private static long mix(long digest, long bits) {
        long mixed = digest;
        for (int shift = 0; shift < Long.SIZE; shift += Byte.SIZE) {
            mixed = (mixed ^ ((bits >>> shift) & 0xff)) * 0x100000001b3L;
        }
        return mixed;
    }
}
