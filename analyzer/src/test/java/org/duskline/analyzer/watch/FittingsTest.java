package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Stream;
import org.duskline.collector.store.Arrival;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;

/** A node that is carried from one trap to another, with an hour on the way. */
class FittingsTest {
    private static final Fitting FIRST = new Fitting("n01", "Alder Bend", Fitted.BOTH, Instant.MIN, at("22T10:00"));
    private static final Fitting SECOND = new Fitting("n01", "Weir Foot", Fitted.SCALE, at("22T11:00"), Instant.MAX);
    private static final Fitting ANOTHER =
            new Fitting("n02", "Alder Bend", Fitted.COUNTER, at("22T12:00"), Instant.MAX);

    private final Fittings fittings = Fittings.of(List.of(FIRST, SECOND, ANOTHER));

    private static Instant at(String time) {
        return Instant.parse("2031-05-" + time + ":00Z");
    }

    private static Arrival message(String node, String... times) {
        List<Sample> samples = Stream.of(times)
                .map(time -> TrapDays.sample(at(time), 0, 0, 6.2))
                .toList();
        return new Arrival(1, node, at("22T18:00"), samples);
    }

    private static List<Instant> times(Fittings.Stretch stretch) {
        return stretch.samples().stream().map(Sample::time).toList();
    }

    @Test
    void samples_that_one_message_brings_from_both_traps_go_each_to_its_own() {
        List<Fittings.Stretch> stretches = fittings.stretches(message("n01", "22T09:00", "22T09:59", "22T11:00"));
        assertThat(stretches).extracting(Fittings.Stretch::fitting).containsExactly(FIRST, SECOND);
        assertThat(times(stretches.get(0))).containsExactly(at("22T09:00"), at("22T09:59"));
        assertThat(times(stretches.get(1))).containsExactly(at("22T11:00"));
    }

    @Test
    void what_it_sensed_on_the_way_belongs_to_no_trap() {
        assertThat(fittings.stretches(message("n01", "22T10:00", "22T10:59"))).isEmpty();
    }

    @Test
    void a_node_that_hangs_nowhere_says_nothing_of_any_trap() {
        assertThat(fittings.stretches(message("n03", "22T09:00"))).isEmpty();
    }

    @Test
    void a_trap_senses_with_what_was_hung_in_it_last() {
        Trap trap = new Trap("Alder Bend", 47.0, 8.0, ZoneId.of("UTC"));
        assertThat(fittings.last(trap)).contains(ANOTHER);
    }
}
