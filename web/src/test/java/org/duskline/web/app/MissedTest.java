package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.deliver.Means;
import org.duskline.web.deliver.Parcel;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MissedTest {
    private static final Instant LAST_ALIVE = Instant.parse("2026-05-12T09:00:00Z");

    @TempDir
    Path folder;

    private Instant now = LAST_ALIVE;
    private long packs = 100;
    private Store store;
    private FindingLog findings;
    private Deliveries deliveries;
    private Missed missed;

    @BeforeEach
    void ada_is_told_and_the_program_is_alive() {
        start();
        var ada = deliveries.book().add("Ada", ZoneOffset.UTC, Optional.empty());
        deliveries.book().add(ada, Means.LOG, "", "", Set.of(Kind.MOVE_IN));
        deliveries.beat();
    }

    @AfterEach
    void stop() {
        deliveries.close();
        store.close();
    }

    private void start() {
        store = Store.open(folder.resolve("duskline.db"));
        findings = new FindingLog(store);
        deliveries = Deliveries.open(
                store,
                new Deliveries.Equipment(Optional.empty(), Optional.empty(), Optional.empty()),
                () -> now,
                new Random(1));
        missed = new Missed(deliveries, () -> packs, findings::changedSince, () -> now);
    }

    private void downFor(Duration time) {
        stop();
        now = now.plus(time);
        start();
        deliveries.beat();
    }

    private void readFor(Duration time, boolean connected) {
        Instant end = now.plus(time);
        while (now.isBefore(end)) {
            missed.looked(List.of(), connected);
            now = now.plusSeconds(30);
        }
        missed.looked(List.of(), connected);
        deliveries.beat();
    }

    private List<String> told() {
        now = now.plus(Duration.ofMinutes(5));
        deliveries.round();
        return deliveries.latest(9).stream().map(Parcel::text).toList();
    }

    private Finding found(String trap) {
        Finding finding = Alarms.moveIn(trap, now.minusSeconds(600), now);
        findings.keep(List.of(finding), packs, (handle, changes) -> {});
        return finding;
    }

    @Test
    void after_a_stop_of_hours_it_is_told_once_what_was_read_and_found_since() {
        downFor(Duration.ofHours(3));
        packs += 40;
        missed.looked(List.of(found("Mill Race")), true);
        readFor(Duration.ofMinutes(3), true);
        readFor(Duration.ofMinutes(3), true);
        assertThat(told())
                .singleElement()
                .satisfies(text -> assertThat(text)
                        .contains("Duskline was down from Tue 12 May, 09:00 to Tue 12 May, 12:00")
                        .contains("read 40 messages")
                        .containsOnlyOnce("Mill Race: a swarm has moved in"));
    }

    @Test
    void nothing_is_told_before_the_broker_is_back_and_has_handed_over_what_it_kept() {
        downFor(Duration.ofHours(3));
        readFor(Duration.ofMinutes(30), false);
        readFor(Duration.ofMinutes(1), true);
        assertThat(told()).isEmpty();
    }

    /** The program says that it is alive as soon as it is back, and so must remember the gap by itself. */
    @Test
    void a_second_restart_before_the_telling_loses_neither_the_gap_nor_what_was_read_and_found_before_it() {
        downFor(Duration.ofHours(3));
        packs += 40;
        missed.looked(List.of(found("Mill Race")), true);
        readFor(Duration.ofMinutes(1), true);
        downFor(Duration.ofSeconds(20));
        packs += 2;
        readFor(Duration.ofMinutes(3), true);
        assertThat(told())
                .singleElement()
                .satisfies(text -> assertThat(text)
                        .contains("Duskline was down from Tue 12 May, 09:00 to Tue 12 May, 12:00")
                        .contains("read 42 messages")
                        .contains("Mill Race: a swarm has moved in"));
    }

    @Test
    void a_second_long_stop_before_the_telling_makes_one_longer_gap() {
        downFor(Duration.ofHours(3));
        downFor(Duration.ofHours(1));
        readFor(Duration.ofMinutes(3), true);
        assertThat(told())
                .singleElement()
                .satisfies(text -> assertThat(text).contains("from Tue 12 May, 09:00 to Tue 12 May, 13:00"));
    }

    @Test
    void a_short_restart_is_no_news() {
        downFor(Duration.ofMinutes(4));
        readFor(Duration.ofMinutes(5), true);
        assertThat(told()).isEmpty();
    }
}
