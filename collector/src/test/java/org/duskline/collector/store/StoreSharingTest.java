package org.duskline.collector.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoreSharingTest {
    @TempDir
    Path folder;

    @Test
    void the_line_can_be_entered_between_two_batches_of_readings() {
        Path file = folder.resolve("duskline.db");
        try (Store store = Store.open(file)) {
            Collector collector = new Collector(store);
            collector.take(List.of(reading(1_778_580_000)));
            store.line().put(new Trap("Mill Race", 47.2, 13.1, ZoneId.of("Europe/Vienna")));
            collector.take(List.of(reading(1_778_580_060)));
            assertThat(collector.tally().samples()).isEqualTo(2);
        }
        try (Store again = Store.open(file)) {
            assertThat(again.line().traps()).hasSize(1);
            assertThat(again.samples().lastPack()).isEqualTo(2);
        }
    }

    private static Message reading(long seconds) {
        String pack = "[{\"bt\":" + seconds + ",\"n\":\"weight\",\"u\":\"kg\",\"v\":8.1}]";
        return new Message(Instant.ofEpochSecond(seconds), "traps/n07/readings", pack.getBytes(StandardCharsets.UTF_8));
    }
}
