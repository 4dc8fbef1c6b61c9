package org.duskline.collector.collect;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.duskline.collector.store.Arrival;
import org.duskline.collector.store.Store;
import org.duskline.collector.wire.Message;
import org.duskline.collector.wire.Sample;

/** Short words for the tests: messages as boards send them, and what the store holds. */
final class Season {
    static final Instant NOON = Instant.parse("2026-05-12T12:00:00Z");

    private Season() {}

    static Message readings(String node, Instant received, String pack) {
        return new Message(received, "traps/" + node + "/readings", pack.getBytes(StandardCharsets.UTF_8));
    }

    static Message status(String node, Instant received, String text) {
        return new Message(received, "traps/" + node + "/status", text.getBytes(StandardCharsets.UTF_8));
    }

    /** One record; the stamp as sent. */
    static String record(String quantity, double value, double stamp) {
        return String.format(Locale.ROOT, "{\"n\":\"%s\",\"v\":%s,\"t\":%.3f}", quantity, value, stamp);
    }

    static String pack(String... records) {
        return "[" + String.join(",", records) + "]";
    }

    static double stamp(Instant time) {
        return time.toEpochMilli() / 1000.0;
    }

    static List<Sample> samples(Store store, String node) {
        List<Sample> samples = new ArrayList<>();
        store.samples().read(node, Instant.MIN, Instant.MAX, samples::add);
        return samples;
    }

    static List<Arrival> arrivals(Store store) {
        return store.samples().arrivalsAfter(0, 100_000);
    }
}
