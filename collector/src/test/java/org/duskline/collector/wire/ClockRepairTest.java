package org.duskline.collector.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ClockRepairTest {
    private static final Instant NOON = Instant.parse("2026-05-12T12:00:00Z");
    private static final double NOON_SECONDS = NOON.getEpochSecond();
    private static final double YEAR_2000 = 946_684_800;

    /** What the receiving side knows of one node, as the store would. */
    private final List<ClockRun> runs = new ArrayList<>();

    private TimedPack receive(Instant received, long boot, long seq, double... stamps) {
        StringBuilder text = new StringBuilder("[");
        for (double stamp : stamps) {
            text.append("{\"n\":\"weight\",\"v\":6,\"t\":").append(stamp).append("},");
        }
        text.append("{\"n\":\"boot\",\"v\":")
                .append(boot)
                .append("},{\"n\":\"seq\",\"v\":")
                .append(seq)
                .append("}]");
        try {
            ReadingPack pack = ReadingPack.decode(text.toString().getBytes(StandardCharsets.UTF_8));
            long millis = received.toEpochMilli();
            boolean asked = ClockRepair.needsRuns(pack, millis);
            TimedPack timed = ClockRepair.place(pack, millis, asked ? List.copyOf(runs) : List.of());
            remember(timed.run());
            return timed;
        } catch (UnreadableMessage e) {
            throw new IllegalStateException(e);
        }
    }

    private void remember(ClockRun run) {
        if (run != null) {
            long id = run.id() == 0 ? runs.size() + 1 : run.id();
            runs.removeIf(known -> known.id() == id);
            runs.add(0, run.numbered(id));
        }
    }

    private static List<Long> secondsBeforeNoon(TimedPack timed) {
        return timed.samples().stream()
                .map(sample -> Duration.between(sample.time(), NOON).toSeconds())
                .toList();
    }

    @Test
    void a_right_stamp_stays_as_it_is_however_late_it_comes() {
        Sample late = receive(NOON.plus(Duration.ofDays(2)), -1, -1, NOON_SECONDS)
                .samples()
                .get(0);
        assertThat(late.time()).isEqualTo(NOON);
        assertThat(late.marks()).isZero();
    }

    @Test
    void a_relative_stamp_counts_back_from_the_receipt() {
        TimedPack timed = receive(NOON, -1, -1, -300, 0);
        assertThat(secondsBeforeNoon(timed)).containsExactly(300L, 0L);
        assertThat(timed.samples()).allMatch(sample -> sample.marks() == Mark.RELATIVE_TIME.bit());
    }

    @Test
    void a_clock_some_seconds_ahead_is_held_back_to_the_receipt_and_not_worth_a_mark() {
        TimedPack timed = receive(NOON, -1, -1, NOON_SECONDS - 53, NOON_SECONDS + 7);
        assertThat(secondsBeforeNoon(timed)).containsExactly(60L, 0L);
        assertThat(timed.samples()).allMatch(sample -> sample.marks() == 0);
    }

    @Test
    void a_clock_some_minutes_ahead_is_held_back_and_marked() {
        TimedPack timed = receive(NOON, -1, -1, NOON_SECONDS + 120, NOON_SECONDS + 240);
        assertThat(secondsBeforeNoon(timed)).containsExactly(120L, 0L);
        assertThat(timed.samples()).allMatch(sample -> sample.marked(Mark.CLOCK_REPAIRED));
    }

    @Test
    void seconds_since_the_start_are_a_clock_that_was_never_set() {
        TimedPack timed = receive(NOON, 18, 0, 274, 573);
        assertThat(secondsBeforeNoon(timed)).containsExactly(299L, 0L);
        assertThat(timed.samples()).allMatch(sample -> sample.marks() == Mark.CLOCK_REPAIRED.bit());
    }

    @Test
    void a_clock_that_started_in_2000_or_runs_years_ahead_keeps_its_spacing() {
        assertThat(secondsBeforeNoon(receive(NOON, 18, 0, YEAR_2000, YEAR_2000 + 300)))
                .containsExactly(300L, 0L);
        assertThat(secondsBeforeNoon(receive(NOON, 18, 1, NOON_SECONDS + 1e8, NOON_SECONDS + 1e8 + 60)))
                .containsExactly(60L, 0L);
    }

    @Test
    void within_a_run_the_quickest_delivery_tells_when_the_clock_started() {
        receive(NOON, 18, 0, 1000);
        TimedPack late = receive(NOON.plusSeconds(4000), 18, 1, 1600);
        assertThat(late.samples().get(0).time()).isEqualTo(NOON.plusSeconds(600));
        assertThat(late.earlierByMillis()).isZero();
    }

    @Test
    void a_backlog_of_a_clockless_node_finds_its_place_once_a_fresh_sample_comes() {
        // Out of reach from 0 to 7200 s; everything is delivered at 7200 s, oldest first.
        receive(NOON, 18, 0, 600);
        TimedPack second = receive(NOON.plusSeconds(1), 18, 1, 3600);
        assertThat(second.earlierByMillis()).isEqualTo(2_999_000);
        TimedPack third = receive(NOON.plusSeconds(2), 18, 2, 7200);
        assertThat(third.samples().get(0).time()).isEqualTo(NOON.plusSeconds(2));
        assertThat(third.earlierByMillis()).isEqualTo(3_599_000);
    }

    @Test
    void radio_jitter_moves_nothing() {
        receive(NOON.plusMillis(900), 18, 0, 100);
        assertThat(receive(NOON.plusSeconds(60), 18, 1, 160).earlierByMillis()).isZero();
    }

    @Test
    void another_boot_is_another_run() {
        receive(NOON, 18, 0, 1000);
        TimedPack restarted = receive(NOON.plusSeconds(7200), 19, 0, 30);
        assertThat(restarted.samples().get(0).time()).isEqualTo(NOON.plusSeconds(7200));
        assertThat(runs).hasSize(2);
    }

    @Test
    void without_boot_a_stamp_that_falls_back_is_a_restart() {
        receive(NOON, -1, -1, 1000);
        TimedPack restarted = receive(NOON.plusSeconds(7200), -1, -1, 30);
        assertThat(restarted.samples().get(0).time()).isEqualTo(NOON.plusSeconds(7200));
    }

    @Test
    void without_boot_a_pack_that_was_overtaken_is_no_restart() {
        receive(NOON, -1, -1, 1000);
        TimedPack overtaken = receive(NOON.plusSeconds(20), -1, -1, 940);
        assertThat(overtaken.samples().get(0).time()).isEqualTo(NOON.minusSeconds(60));
    }

    @Test
    void without_boot_a_pack_number_that_falls_while_the_stamps_rise_is_a_restart() {
        receive(NOON, -1, 9, 300);
        TimedPack restarted = receive(NOON.plusSeconds(7200), -1, 0, 500);
        assertThat(restarted.samples().get(0).time()).isEqualTo(NOON.plusSeconds(7200));
    }

    @Test
    void a_clock_that_was_set_while_the_pack_filled_puts_the_earlier_samples_before_the_setting() {
        TimedPack timed = receive(NOON.plusSeconds(5), 18, 0, 60, 120, NOON_SECONDS);
        assertThat(secondsBeforeNoon(timed)).containsExactly(60L, 0L, 0L);
    }

    @Test
    void one_wild_stamp_does_not_drag_the_run_with_it() {
        receive(NOON, 18, 0, 1000);
        TimedPack wild = receive(NOON.plusSeconds(60), 18, 1, 134_218_788);
        assertThat(wild.earlierByMillis()).isZero();
        TimedPack next = receive(NOON.plusSeconds(120), 18, 2, 1120);
        assertThat(next.samples().get(0).time()).isEqualTo(NOON.plusSeconds(120));
        assertThat(next.earlierByMillis()).isZero();
    }

    @Test
    void an_age_of_decades_is_a_clock_that_was_never_set_either() {
        TimedPack timed = receive(NOON, 18, 0, -1e9, -1e9 + 60);
        assertThat(secondsBeforeNoon(timed)).containsExactly(60L, 0L);
        assertThat(timed.samples()).allMatch(sample -> sample.marked(Mark.CLOCK_REPAIRED));
    }

    @Test
    void wrong_stamps_years_apart_are_damage() throws Exception {
        ReadingPack pack =
                ReadingPack.decode("[{\"n\":\"in\",\"v\":1,\"t\":946684800},{\"n\":\"in\",\"v\":1,\"t\":4000000000}]"
                        .getBytes(StandardCharsets.UTF_8));
        assertThatThrownBy(() -> ClockRepair.place(pack, NOON.toEpochMilli(), List.of()))
                .isInstanceOfSatisfying(
                        UnreadableMessage.class, e -> assertThat(e.reason()).isEqualTo(DamageReason.TIME));
    }

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    /** A node with any of the clocks, restarts and delays that cheap boards have, against when it really measured. */
    @ParameterizedTest
    @MethodSource("seeds")
    void whatever_the_clock_a_sample_is_placed_within_its_delivery_delay_and_never_after_receipt(long seed) {
        Random random = new Random(seed);
        double base = List.of(0.0, YEAR_2000, 1_514_764_800.0, NOON_SECONDS + 3_600 * 24 * 365)
                .get(random.nextInt(4));
        Instant now = NOON;
        for (int boot = 1; boot <= 5; boot++) {
            Instant start = now.plusSeconds(1 + random.nextInt(100_000));
            now = start.plusSeconds(5);
            for (int seq = 0; seq < 12; seq++) {
                now = now.plusSeconds(30 + random.nextInt(600));
                long uptime = Duration.between(start, now).toSeconds();
                Instant measured = start.plusSeconds(uptime);
                int delay = seq == 0 ? 0 : random.nextInt(20);
                Instant received = now.plusSeconds(delay);
                Sample placed = receive(received, boot, seq, base + uptime - 20, base + uptime)
                        .samples()
                        .get(1);
                assertThat(placed.time()).isBeforeOrEqualTo(received);
                assertThat(Duration.between(measured, placed.time()).abs()).isLessThanOrEqualTo(Duration.ofSeconds(1));
            }
        }
    }
}
