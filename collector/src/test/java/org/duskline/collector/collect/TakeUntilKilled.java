package org.duskline.collector.collect;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.duskline.collector.store.Store;
import org.duskline.collector.wire.Message;

/** Takes batch after batch and writes down how many are durable; made to be killed. */
final class TakeUntilKilled {
    static final int BATCH = 50;

    private TakeUntilKilled() {}

    public static void main(String[] arguments) throws IOException {
        Path durable = Path.of(arguments[1]);
        try (Store store = Store.open(Path.of(arguments[0]))) {
            Collector collector = new Collector(store);
            for (int batch = 0; batch < 1_000_000; batch++) {
                collector.take(batch(batch));
                Files.writeString(durable, "x", StandardOpenOption.CREATE, StandardOpenOption.APPEND);
            }
        }
    }

    static List<Message> batch(int number) {
        List<Message> messages = new ArrayList<>();
        for (int i = 0; i < BATCH; i++) {
            Instant time = Season.NOON.plusSeconds(60L * (number * BATCH + i));
            messages.add(Season.readings(
                    "n07", time, Season.pack(Season.record("in", number * BATCH + i, Season.stamp(time)))));
        }
        return messages;
    }
}
