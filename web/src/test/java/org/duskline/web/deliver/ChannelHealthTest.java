package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Trap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No mail server is set up here, so that whatever goes by mail fails; the log takes everything. */
class ChannelHealthTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final Instant ONSET = Instant.parse("2026-05-12T11:04:00Z");

    @TempDir
    Path folder;

    private final SetClock clock = new SetClock(ONSET.plus(Duration.ofMinutes(9)));
    private Store store;
    private Deliveries deliveries;
    private Person ada;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("health.db"));
        store.line().put(new Trap("Mill Race", 47.5, 14.5, VIENNA));
        deliveries = Deliveries.open(
                store,
                new Deliveries.Equipment(Optional.empty(), Optional.empty(), Optional.empty()),
                clock,
                new Random(3));
        ada = deliveries.book().add("Ada", VIENNA, Optional.empty());
    }

    @AfterEach
    void close() {
        deliveries.close();
        store.close();
    }

    @Test
    void a_dead_channel_is_told_once_through_the_one_that_works() {
        add(ada, Means.EMAIL, "ada@line.example");
        Channel log = add(ada, Means.LOG, "");
        aSwarm();
        daysPass(2);
        assertThat(toldOfADeadChannel())
                .singleElement()
                .satisfies(message -> assertThat(message.channel()).isEqualTo(log.id()));
    }

    @Test
    void a_way_added_afterwards_is_not_told_what_the_others_know() {
        add(ada, Means.EMAIL, "ada@line.example");
        Channel log = add(ada, Means.LOG, "");
        aSwarm();
        daysPass(1);
        add(ada, Means.LOG, "");
        daysPass(1);
        assertThat(toldOfADeadChannel())
                .singleElement()
                .satisfies(message -> assertThat(message.channel()).isEqualTo(log.id()));
    }

    @Test
    void two_dead_channels_are_not_told_through_each_other() {
        add(ada, Means.EMAIL, "ada@line.example");
        add(ada, Means.EMAIL, "hut@line.example");
        Channel log = add(ada, Means.LOG, "");
        aSwarm();
        daysPass(2);
        assertThat(toldOfADeadChannel())
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message.channel()).isEqualTo(log.id()));
        assertThat(deliveries.pending()).noneMatch(waiting -> waiting.title().startsWith("Nothing gets through"));
    }

    @Test
    void where_nothing_of_ones_own_works_somebody_else_is_told() {
        add(ada, Means.EMAIL, "ada@line.example");
        add(ada, Means.EMAIL, "hut@line.example");
        Channel other = add(deliveries.book().add("Bo", VIENNA, Optional.empty()), Means.LOG, "");
        aSwarm();
        daysPass(2);
        assertThat(toldOfADeadChannel())
                .isNotEmpty()
                .allSatisfy(message -> assertThat(message.channel()).isEqualTo(other.id()));
    }

    private Channel add(Person person, Means means, String address) {
        return deliveries.book().add(person, means, address, "", AddressBook.USUAL_KINDS);
    }

    private void aSwarm() {
        new FindingLog(store).keep(List.of(InventedAlarms.raised("Mill Race", Kind.MOVE_IN, ONSET)), 1, deliveries);
    }

    private void daysPass(int days) {
        for (int minutes = 0; minutes < days * 24 * 60; minutes += 10) {
            clock.pass(Duration.ofMinutes(10));
            deliveries.round();
        }
    }

    private List<Parcel> toldOfADeadChannel() {
        return deliveries.latest(100).stream()
                .filter(message -> message.title().contains("Nothing gets through"))
                .toList();
    }
}
