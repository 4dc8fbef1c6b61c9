package org.duskline.collector.collect;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.duskline.collector.store.Store;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.ChildJvm;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KilledTest {
    @TempDir
    Path folder;

    @Test
    void a_kill_at_any_moment_leaves_whole_batches_and_all_that_were_reported_durable() throws Exception {
        Path file = folder.resolve("season.db");
        Path durable = folder.resolve("durable");
        for (int kill = 1; kill <= 3; kill++) {
            int until = 5 + 7 * kill;
            Files.deleteIfExists(durable);
            Process child = ChildJvm.start(
                    TakeUntilKilled.class, folder.resolve("child.log"), file.toString(), durable.toString());
            try {
                Await.until(
                        until + " batches are durable", () -> Files.exists(durable) && Files.size(durable) >= until);
            } finally {
                child.destroyForcibly().waitFor();
            }
            checkWholeBatches(file, Files.size(durable));
        }
    }

    private static void checkWholeBatches(Path file, long reported) {
        try (Store store = Store.open(file)) {
            List<Sample> samples = Season.samples(store, "n07");
            assertThat(samples.size() % TakeUntilKilled.BATCH).isZero();
            assertThat((long) samples.size()).isGreaterThanOrEqualTo(reported * TakeUntilKilled.BATCH);
            for (int i = 0; i < samples.size(); i++) {
                assertThat(samples.get(i).in()).isEqualTo(i);
            }
            // The broker delivers again what was not acknowledged, and perhaps more.
            Collector collector = new Collector(store);
            collector.take(TakeUntilKilled.batch(0));
            assertThat(collector.tally().samples()).isZero();
        }
    }
}
