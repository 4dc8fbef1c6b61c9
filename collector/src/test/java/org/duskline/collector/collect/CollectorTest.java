package org.duskline.collector.collect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskline.collector.collect.Season.NOON;
import static org.duskline.collector.collect.Season.arrivals;
import static org.duskline.collector.collect.Season.pack;
import static org.duskline.collector.collect.Season.readings;
import static org.duskline.collector.collect.Season.record;
import static org.duskline.collector.collect.Season.samples;
import static org.duskline.collector.collect.Season.stamp;
import static org.duskline.collector.collect.Season.status;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.collector.store.Arrival;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.KeptDamage;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.wire.DamageReason;
import org.duskline.collector.wire.Mark;
import org.duskline.collector.wire.Message;
import org.duskline.collector.wire.Sample;
import org.duskline.collector.wire.Status;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CollectorTest {
    @TempDir
    Path folder;

    private Store store;
    private Collector collector;

    @BeforeEach
    void start() {
        store = Store.open(folder.resolve("season.db"));
        collector = new Collector(store);
    }

    @AfterEach
    void stop() {
        store.close();
    }

    private void take(Message... messages) {
        collector.take(List.of(messages));
    }

    private static Instant after(int seconds) {
        return NOON.plusSeconds(seconds);
    }

    @Test
    void a_node_that_nobody_registered_is_stored_from_its_first_message() {
        take(status("n07", after(0), "online"), readings("n07", after(5), pack(record("weight", 6.1, stamp(NOON)))));
        assertThat(store.nodes().all())
                .containsExactly(
                        new HeardNode("n07", after(0), after(5), Optional.of(Status.ONLINE), Optional.of(after(0))));
        assertThat(samples(store, "n07")).singleElement().satisfies(sample -> {
            assertThat(sample.time()).isEqualTo(NOON);
            assertThat(sample.weightKg()).isEqualTo(6.1);
            assertThat(sample.in()).isNaN();
        });
    }

    @Test
    void an_older_status_that_comes_again_does_not_undo_a_newer_one() {
        take(status("n07", after(9), "offline"), status("n07", after(0), "online"));
        assertThat(store.nodes().find("n07").orElseThrow().status()).contains(Status.OFFLINE);
        assertThat(store.nodes().find("n08")).isEmpty();
    }

    @Test
    void what_cannot_be_decoded_is_kept_as_it_came_and_stops_nothing() {
        Message torn = readings("n07", after(0), "[{\"n\":\"weight\",\"v\":6");
        take(
                torn,
                readings("n07", after(1), pack(record("in", 5, 0))),
                status("n07", after(2), "alive"),
                readings("n 7", after(3), "[]"),
                readings("n07", after(4), "[]"));
        assertThat(samples(store, "n07")).hasSize(1);
        Map<DamageReason, Long> expected = Map.of(
                DamageReason.TORN,
                1L,
                DamageReason.STATUS,
                1L,
                DamageReason.NODE_NAME,
                1L,
                DamageReason.NO_QUANTITY,
                1L);
        assertThat(store.damages().byReason()).isEqualTo(expected);
        assertThat(collector.tally()).isEqualTo(new Tally(5, 1, 0, 0, 0, 0, 0, expected));
        KeptDamage first = store.damages().latest(10).get(3);
        assertThat(first.damage().message().payload()).isEqualTo(torn.payload());
        assertThat(first.damage().message().topic()).isEqualTo(torn.topic());
        assertThat(first.damage().message().received()).isEqualTo(torn.received());
        assertThat(first.damage().detail()).contains("ends in its middle");
    }

    @Test
    void a_pack_delivered_twice_is_stored_once() {
        String pack = pack(record("in", 5, stamp(NOON)), record("out", 4, stamp(NOON)));
        take(readings("n07", after(1), pack));
        take(readings("n07", after(40), pack), readings("n08", after(40), pack));
        assertThat(samples(store, "n07")).hasSize(1);
        assertThat(samples(store, "n08")).hasSize(1);
        assertThat(collector.tally().repeats()).isEqualTo(1);
        assertThat(arrivals(store)).hasSize(2);
    }

    @Test
    void a_backlog_packed_anew_brings_only_what_is_new() {
        take(readings("n07", after(60), pack(record("in", 5, stamp(after(0))), record("in", 6, stamp(after(60))))));
        take(readings("n07", after(120), pack(record("in", 6, stamp(after(60))), record("in", 7, stamp(after(120))))));
        assertThat(samples(store, "n07")).extracting(Sample::in).containsExactly(5.0, 6.0, 7.0);
        assertThat(collector.tally().repeats()).isEqualTo(1);
        assertThat(arrivals(store).get(1).samples()).extracting(Sample::in).containsExactly(7.0);
    }

    @Test
    void a_numbered_pack_without_a_clock_is_known_again_an_hour_later_with_other_ages() {
        take(readings(
                "n07",
                after(0),
                pack(record("in", 5, -60), record("in", 6, 0), record("boot", 3, 0), record("seq", 9, 0))));
        take(readings(
                "n07",
                after(3_600),
                pack(
                        record("in", 5, -3_660),
                        record("in", 6, -3_600),
                        record("boot", 3, -3_600),
                        record("seq", 9, -3_600))));
        assertThat(samples(store, "n07")).hasSize(2);
        assertThat(collector.tally().repeats()).isEqualTo(2);
    }

    @Test
    void an_idle_counter_without_clock_or_number_may_say_the_same_each_minute_but_not_twice_in_ten_seconds() {
        String idle = pack(record("in", 5, 0), record("out", 4, 0));
        for (int minute = 0; minute < 6; minute++) {
            take(readings("n07", after(60 * minute), idle));
        }
        take(readings("n07", after(310), idle));
        take(readings("n07", after(360), idle));
        assertThat(samples(store, "n07")).hasSize(7);
        assertThat(collector.tally().repeats()).isEqualTo(1);
    }

    @Test
    void a_node_that_numbers_its_packs_but_not_its_starts_may_send_the_same_after_a_restart() {
        for (int seq = 0; seq < 5; seq++) {
            take(readings("n07", after(60 * seq), pack(record("in", 0, 0), record("seq", seq, 0))));
        }
        Instant night = after(6 * 3_600);
        take(readings("n07", night, pack(record("in", 0, 0), record("seq", 3, 0))));
        take(readings("n07", night.plusSeconds(40), pack(record("in", 0, 0), record("seq", 3, 0))));
        assertThat(samples(store, "n07")).hasSize(6);
    }

    @Test
    void two_messages_about_one_instant_are_put_together() {
        take(readings("n07", after(1), pack(record("weight", 6, stamp(NOON)))));
        take(readings("n07", after(2), pack(record("in", 5, stamp(NOON)), record("weight", 6, stamp(NOON)))));
        assertThat(samples(store, "n07")).singleElement().satisfies(sample -> {
            assertThat(sample.weightKg()).isEqualTo(6);
            assertThat(sample.in()).isEqualTo(5);
        });
        assertThat(collector.tally().merged()).isEqualTo(1);
        assertThat(arrivals(store)).extracting(Arrival::pack).contains(2L);
    }

    @Test
    void two_messages_that_contradict_each_other_are_both_kept() {
        take(readings("n07", after(1), pack(record("weight", 6, stamp(NOON)))));
        take(readings("n07", after(2), pack(record("weight", 9, stamp(NOON)))));
        take(readings("n07", after(3), pack(record("weight", 9, stamp(NOON)))));
        assertThat(samples(store, "n07")).extracting(Sample::weightKg).containsExactly(6.0, 9.0);
    }

    @Test
    void late_and_overtaken_samples_stand_in_time_order_and_arrive_in_order_of_receipt() {
        take(
                readings("n07", after(200), pack(record("in", 3, stamp(after(200))))),
                readings("n07", after(201), pack(record("in", 2, stamp(after(100))))),
                readings("n07", after(172_800), pack(record("in", 1, stamp(after(0))))));
        assertThat(samples(store, "n07")).extracting(Sample::in).containsExactly(1.0, 2.0, 3.0);
        assertThat(arrivals(store))
                .extracting(arrival -> arrival.samples().get(0).in())
                .containsExactly(3.0, 2.0, 1.0);
        assertThat(store.samples().arrivalsAfter(2, 10))
                .extracting(Arrival::received)
                .containsExactly(after(172_800));
        assertThat(store.samples().arrivalsAfter(0, 1)).hasSize(1);
        assertThat(store.samples().lastPack()).isEqualTo(3);
    }

    @Test
    void what_is_known_of_a_wrong_clock_outlives_the_program() {
        take(readings("n07", after(1), pack(record("in", 1, 1_000), record("boot", 3, 1_000))));
        stop();
        start();
        take(readings("n07", after(4_001), pack(record("in", 2, 1_600), record("boot", 3, 1_600))));
        assertThat(samples(store, "n07")).extracting(Sample::time).containsExactly(after(1), after(601));
        assertThat(samples(store, "n07")).allMatch(sample -> sample.marked(Mark.CLOCK_REPAIRED));
    }

    @Test
    void a_clockless_backlog_moves_to_its_place_when_a_fresh_sample_shows_what_the_clock_meant() {
        for (int i = 0; i <= 6; i++) {
            take(readings(
                    "n07",
                    after(i),
                    pack(record("in", i, 600 * (i + 1)), record("boot", 3, 600), record("seq", i, 600))));
        }
        List<Sample> placed = samples(store, "n07");
        assertThat(placed).extracting(Sample::in).containsExactly(0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0);
        for (int i = 0; i <= 6; i++) {
            assertThat(placed.get(i).time()).isBetween(after(-600 * (6 - i)), after(-600 * (6 - i) + 6));
        }
        List<Arrival> all = arrivals(store);
        assertThat(all.get(all.size() - 1).samples()).hasSize(7);
        assertThat(collector.tally().samples()).isEqualTo(7);
    }

    @Test
    void raw_counts_are_weighed_by_the_calibration_of_their_day_even_if_it_is_entered_later() {
        take(readings(
                "n07",
                after(120),
                pack(record("load", 50_000, stamp(after(0))), record("load", 92_000, stamp(after(120))))));
        assertThat(samples(store, "n07")).allMatch(sample -> Double.isNaN(sample.weightKg()));
        store.line().put(new Calibration("n07", after(-1), 8_000, 21_000));
        assertThat(samples(store, "n07")).extracting(Sample::weightKg).containsExactly(2.0, 4.0);
        store.line().put(new Calibration("n07", after(60), 8_000, 42_000));
        assertThat(samples(store, "n07")).extracting(Sample::weightKg).containsExactly(2.0, 2.0);
        assertThat(arrivals(store).get(0).samples())
                .extracting(Sample::weightKg)
                .containsExactly(2.0, 2.0);
        assertThat(samples(store, "n07")).extracting(Sample::loadCount).containsExactly(50_000.0, 92_000.0);
    }
}
