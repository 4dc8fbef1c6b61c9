package org.duskline.collector.collect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskline.collector.collect.Season.NOON;
import static org.duskline.collector.collect.Season.pack;
import static org.duskline.collector.collect.Season.readings;
import static org.duskline.collector.collect.Season.record;
import static org.duskline.collector.collect.Season.samples;
import static org.duskline.collector.collect.Season.stamp;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.duskline.collector.store.Arrival;
import org.duskline.collector.store.Store;
import org.duskline.collector.wire.Message;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Random traffic as bad radios make it, against a plain map of what the nodes measured. */
class RandomSeasonTest {
    @TempDir
    Path folder;

    static LongStream seeds() {
        return LongStream.range(0, 12);
    }

    /** A node's packs of two samples with the clock right; some twice, some late, some torn, all shuffled by delay. */
    private static List<Message> traffic(String node, Random random, Map<Instant, Double> measured) {
        List<Message> messages = new ArrayList<>();
        double in = 0;
        for (int i = 0; i < 60; i++) {
            List<String> records = new ArrayList<>();
            Instant newest = NOON;
            for (int k = 0; k < 2; k++) {
                in += random.nextInt(5);
                newest = NOON.plusSeconds(120L * i + 60L * k);
                measured.put(newest, in);
                records.add(record("in", in, stamp(newest)));
            }
            String pack = pack(records.toArray(String[]::new));
            for (int copies = 1 + random.nextInt(2); copies > 0; copies--) {
                int delay = random.nextInt(10) == 0 ? random.nextInt(200_000) : random.nextInt(300);
                messages.add(readings(node, newest.plusSeconds(delay), pack));
            }
            if (random.nextInt(5) == 0) {
                messages.add(readings(node, newest, pack.substring(0, random.nextInt(pack.length()))));
            }
        }
        return messages;
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void every_measured_sample_is_stored_once_however_it_came_and_however_often_the_stream_is_taken(long seed) {
        Random random = new Random(seed);
        Map<String, Map<Instant, Double>> measured = new TreeMap<>();
        List<Message> messages = new ArrayList<>();
        for (String node : List.of("n07", "esp_1", "trap-3")) {
            measured.put(node, new TreeMap<>());
            messages.addAll(traffic(node, random, measured.get(node)));
        }
        messages.sort(Comparator.comparing(Message::received));
        try (Store store = Store.open(folder.resolve("season.db"))) {
            takeInBatches(new Collector(store), messages, random);
            check(store, measured);
            long packs = store.samples().lastPack();
            Collector again = new Collector(store);
            takeInBatches(again, messages, random);
            check(store, measured);
            assertThat(again.tally().samples() + again.tally().merged()).isZero();
            assertThat(store.samples().lastPack()).isEqualTo(packs);
        }
    }

    private static void takeInBatches(Collector collector, List<Message> messages, Random random) {
        int from = 0;
        while (from < messages.size()) {
            int until = Math.min(messages.size(), from + 1 + random.nextInt(40));
            collector.take(messages.subList(from, until));
            from = until;
        }
    }

    private static void check(Store store, Map<String, Map<Instant, Double>> measured) {
        int count = 0;
        for (Map.Entry<String, Map<Instant, Double>> node : measured.entrySet()) {
            Map<Instant, Double> stored = new TreeMap<>();
            List<Sample> samples = samples(store, node.getKey());
            samples.forEach(sample -> stored.put(sample.time(), sample.in()));
            assertThat(stored).isEqualTo(node.getValue());
            assertThat(samples).hasSameSizeAs(stored.keySet());
            count += samples.size();
        }
        List<Arrival> arrivals = Season.arrivals(store);
        assertThat(arrivals).extracting(Arrival::received).isSorted();
        assertThat(arrivals.stream()
                        .mapToInt(arrival -> arrival.samples().size())
                        .sum())
                .isEqualTo(count);
    }
}
