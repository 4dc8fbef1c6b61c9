package org.duskline.collector.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.LaneBlock;
import org.duskline.collector.trap.Trap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LineBookTest {
    private static final Instant APRIL = Instant.parse("2026-04-01T00:00:00Z");
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

    @TempDir
    Path folder;

    private Store store;
    private LineBook line;

    @BeforeEach
    void openALineOfThreeTraps() {
        store = Store.open(folder.resolve("line.db"));
        line = store.line();
        for (String name : List.of("Mill Race", "High Field", "Low Wood")) {
            line.put(new Trap(name, 47, 15, VIENNA));
        }
    }

    @AfterEach
    void close() {
        store.close();
    }

    private static Instant day(int number) {
        return APRIL.plus(number, ChronoUnit.DAYS);
    }

    private static Fitting fitting(String node, String trap, int from, int until) {
        return new Fitting(node, trap, Fitted.BOTH, day(from), day(until));
    }

    @Test
    void a_trap_entered_again_is_corrected() {
        Trap moved = new Trap("Mill Race", 47.5, 15.5, VIENNA);
        line.put(moved);
        assertThat(line.traps()).hasSize(3).contains(moved);
        assertThat(line.trap("Mill Race")).contains(moved);
        assertThat(line.trap("Nowhere")).isEmpty();
    }

    @Test
    void a_node_moved_in_mid_season_ends_its_old_fitting_that_day() {
        line.put(new Fitting("n07", "Mill Race", Fitted.BOTH, day(0), Instant.MAX));
        line.put(new Fitting("n07", "High Field", Fitted.SCALE, day(30), Instant.MAX));
        assertThat(line.fittingsOf("n07"))
                .containsExactly(
                        fitting("n07", "Mill Race", 0, 30),
                        new Fitting("n07", "High Field", Fitted.SCALE, day(30), Instant.MAX));
        assertThat(line.fittingOf("n07", day(29))).map(Fitting::trap).contains("Mill Race");
        assertThat(line.fittingOf("n07", day(30))).map(Fitting::trap).contains("High Field");
        assertThat(line.fittingOf("n07", day(-1))).isEmpty();
    }

    @Test
    void a_loan_entered_later_leaves_the_fitting_on_both_sides() {
        line.put(fitting("n07", "Mill Race", 0, 100));
        line.put(fitting("n07", "High Field", 40, 50));
        assertThat(line.fittingsOf("n07"))
                .containsExactly(
                        fitting("n07", "Mill Race", 0, 40),
                        fitting("n07", "High Field", 40, 50),
                        fitting("n07", "Mill Race", 50, 100));
        line.remove(fitting("n07", "High Field", 40, 50));
        assertThat(line.fittings()).hasSize(2);
    }

    @Test
    void two_nodes_may_hang_in_one_trap() {
        line.put(List.of(), List.of(fitting("n07", "Mill Race", 0, 100), fitting("n08", "Mill Race", 10, 100)));
        assertThat(line.fittingsIn("Mill Race")).extracting(Fitting::node).containsExactly("n07", "n08");
    }

    @Test
    void a_fitting_in_an_unknown_trap_changes_nothing() {
        line.put(fitting("n07", "Mill Race", 0, 100));
        assertThatThrownBy(() -> line.put(fitting("n07", "Nowhere", 40, 50))).hasStackTraceContaining("FOREIGN KEY");
        assertThat(line.fittings()).containsExactly(fitting("n07", "Mill Race", 0, 100));
    }

    @Test
    void calibrations_are_dated_and_corrected() {
        line.put(new Calibration("n07", day(20), 10, 200));
        line.put(new Calibration("n07", day(0), 10, 100));
        line.put(new Calibration("n07", day(20), 12, 210));
        assertThat(line.calibrations("n07"))
                .containsExactly(new Calibration("n07", day(0), 10, 100), new Calibration("n07", day(20), 12, 210));
        assertThat(line.calibrations("n08")).isEmpty();
    }

    static LongStream seeds() {
        return LongStream.range(0, 15);
    }

    /** The plain model: for each day the trap that was entered for it last. */
    @ParameterizedTest
    @MethodSource("seeds")
    void on_each_day_a_node_hangs_where_it_was_entered_last(long seed) {
        Random random = new Random(seed);
        List<String> traps = List.of("Mill Race", "High Field", "Low Wood");
        Map<Integer, String> model = new HashMap<>();
        for (int i = 0; i < 12; i++) {
            int from = random.nextInt(40);
            int until = from + 1 + random.nextInt(20);
            String trap = traps.get(random.nextInt(3));
            line.put(fitting("n07", trap, from, until));
            for (int day = from; day < until; day++) {
                model.put(day, trap);
            }
        }
        List<Fitting> fittings = line.fittingsOf("n07");
        for (int day = 0; day < 62; day++) {
            Instant noon = day(day).plus(12, ChronoUnit.HOURS);
            List<String> hung = fittings.stream()
                    .filter(f -> f.covers(noon))
                    .map(Fitting::trap)
                    .toList();
            assertThat(hung).isEqualTo(model.containsKey(day) ? List.of(model.get(day)) : List.of());
        }
    }

    @Test
    void the_keepers_word_about_a_counter_goes_before_the_nodes() {
        Instant may = Instant.parse("2026-05-01T00:00:00Z");
        Instant june = Instant.parse("2026-06-01T00:00:00Z");
        line.nodeSays("n07", 8, may);
        line.nodeSays("n07", 4, june);
        assertThat(line.laneBlock("n07", may).orElseThrow().lanes()).isEqualTo(8);
        assertThat(line.laneBlock("n07", june).orElseThrow().lanes()).isEqualTo(4);
        assertThat(line.laneBlock("n08", june)).isEmpty();

        LaneBlock measured = new LaneBlock("n07", Instant.MIN, 6, Duration.ofMillis(120));
        line.put(measured);
        line.nodeSays("n07", 8, june);
        assertThat(line.laneBlocks("n07")).containsExactly(measured);
    }
}
