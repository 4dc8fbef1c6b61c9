package org.duskline.collector.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.duskline.collector.wire.Sample;
import org.duskline.collector.wire.TimedPack;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoreTest {
    @TempDir
    Path folder;

    private static Sample sample(long time) {
        double absent = Double.NaN;
        return new Sample(time, time, time, 0, absent, absent, absent, -0.5, absent, absent, absent, -1, 0, 0);
    }

    private static Stored put(PackWriter writer, String node, long time) throws SQLException {
        TimedPack pack = new TimedPack(List.of(sample(time)), null, 0);
        return writer.pack(writer.heard(node, time), time, pack, -1, -1, time);
    }

    private static List<Sample> read(Store store, String node) {
        List<Sample> samples = new ArrayList<>();
        store.samples().read(node, Instant.MIN, Instant.MAX, samples::add);
        return samples;
    }

    @Test
    void a_sample_comes_back_as_it_was_with_absent_told_from_zero() {
        try (Store store = Store.open(folder.resolve("new/folder/season.db"))) {
            store.write(writer -> put(writer, "n07", 1_777_888_800_250L));
            assertThat(read(store, "n07")).containsExactly(sample(1_777_888_800_250L));
            assertThat(read(store, "n08")).isEmpty();
        }
    }

    @Test
    void a_read_takes_its_first_instant_and_leaves_its_last_out() {
        try (Store store = Store.open(folder.resolve("season.db"))) {
            store.write(writer -> {
                for (long time = 10; time < 20; time++) {
                    put(writer, "n07", time);
                }
                return null;
            });
            List<Long> times = new ArrayList<>();
            store.samples()
                    .read("n07", Instant.ofEpochMilli(12), Instant.ofEpochMilli(15), s -> times.add(s.timeMillis()));
            assertThat(times).containsExactly(12L, 13L, 14L);
        }
    }

    @Test
    void a_work_that_fails_leaves_nothing_and_the_next_one_works() {
        try (Store store = Store.open(folder.resolve("season.db"))) {
            assertThatThrownBy(() -> store.write(writer -> {
                        put(writer, "n07", 10);
                        throw new SQLException("disk full");
                    }))
                    .isInstanceOf(StoreProblem.class)
                    .hasMessageContaining("season.db")
                    .hasMessageContaining("disk full")
                    .hasMessageContaining("Nothing of it was kept");
            assertThatThrownBy(() -> store.write(writer -> {
                        put(writer, "n07", 11);
                        throw new IllegalStateException("a mistake");
                    }))
                    .hasMessage("a mistake");
            assertThat(store.nodes().all()).isEmpty();
            store.write(writer -> put(writer, "n07", 12));
            assertThat(read(store, "n07")).containsExactly(sample(12));
            assertThat(store.samples().lastPack()).isEqualTo(1);
        }
    }

    @Test
    void readers_see_the_last_commit_while_a_writer_is_at_work_and_the_other_way_round() {
        try (Store store = Store.open(folder.resolve("season.db"))) {
            store.write(writer -> put(writer, "n07", 10));
            store.write(writer -> {
                put(writer, "n07", 11);
                List<Sample> seen = CompletableFuture.supplyAsync(() -> read(store, "n07"))
                        .orTimeout(60, TimeUnit.SECONDS)
                        .join();
                assertThat(seen).hasSize(1);
                return null;
            });
            List<Long> during = new ArrayList<>();
            store.samples().read("n07", Instant.MIN, Instant.MAX, sample -> {
                during.add(sample.timeMillis());
                CompletableFuture.runAsync(() -> store.write(writer -> put(writer, "n07", 100 + sample.timeMillis())))
                        .orTimeout(60, TimeUnit.SECONDS)
                        .join();
            });
            assertThat(during).containsExactly(10L, 11L);
            assertThat(read(store, "n07")).hasSize(4);
        }
    }

    @Test
    void between_two_works_others_may_write() {
        try (Store store = Store.open(folder.resolve("season.db"))) {
            store.write(writer -> put(writer, "n07", 10));
            store.jdbi().useTransaction(handle -> handle.execute("CREATE TABLE guest (name TEXT)"));
            store.write(writer -> put(writer, "n07", 11));
            store.jdbi().useHandle(handle -> handle.execute("INSERT INTO guest VALUES ('a swallow')"));
            store.write(writer -> put(writer, "n07", 12));
            assertThat(read(store, "n07")).hasSize(3);
        }
    }

    @Test
    void another_module_keeps_its_own_tables_and_history_in_the_same_file() {
        Path file = folder.resolve("season.db");
        for (int start = 0; start < 2; start++) {
            try (Store store = Store.open(file)) {
                store.migrate("guest_history", "classpath:org/duskline/collector/guest");
                int name = start;
                store.jdbi().useTransaction(handle -> handle.execute("INSERT INTO guest VALUES (?)", "guest " + name));
                int guests = store.jdbi()
                        .withHandle(handle -> handle.createQuery("SELECT count(*) FROM guest")
                                .mapTo(Integer.class)
                                .one());
                assertThat(guests).isEqualTo(start + 1);
            }
        }
    }

    @Test
    void every_commit_is_written_through_and_readers_never_wait() {
        try (Store store = Store.open(folder.resolve("season.db"))) {
            store.jdbi().useHandle(handle -> {
                assertThat(handle.createQuery("PRAGMA journal_mode")
                                .mapTo(String.class)
                                .one())
                        .isEqualTo("wal");
                // 2 is FULL, see the pragma's page in SQLite's documentation.
                assertThat(handle.createQuery("PRAGMA synchronous")
                                .mapTo(Integer.class)
                                .one())
                        .isEqualTo(2);
            });
        }
    }

    @Test
    void a_file_that_is_no_database_is_named_and_left_alone() throws Exception {
        Path file = Files.writeString(folder.resolve("notes.txt"), "Buy foundation. ".repeat(100));
        assertThatThrownBy(() -> Store.open(file))
                .isInstanceOf(StoreProblem.class)
                .hasMessageContaining("notes.txt")
                .hasMessageContaining("database of this program");
        assertThat(Files.readString(file)).startsWith("Buy foundation.");
    }
}
