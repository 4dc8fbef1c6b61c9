package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is told when samples come late, in another order or never. */
class LateNewsTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);

    private static TrapDays quiet(long seed) {
        return new TrapDays(seed, TWO_MINUTES).until("22T12:30");
    }

    @ParameterizedTest
    @EnumSource(Fitted.class)
    void a_swarm_that_arrives_while_the_node_is_out_of_range_is_told_once_when_the_news_comes(Fitted fitted) {
        TrapDays days = quiet(3);
        Instant start = days.now();
        WatchedTrap trap = new WatchedTrap(fitted).hears(days);
        int heard = days.samples().size();
        List<Sample> all =
                days.swarm(1.4, Duration.ofMinutes(18)).until("23T18:00").samples();
        List<Sample> late = all.subList(heard, all.size());

        Instant news = Instant.parse("2031-05-23T18:05:00Z");
        trap.hears(late, news);
        trap.hears(late, news.plusSeconds(60));

        List<Finding> told = trap.moveIns(Stage.RAISED);
        assertThat(told).hasSize(1);
        assertThat(told.get(0).raised()).isEqualTo(news);
        assertThat(told.get(0).onset()).isBetween(start.minusSeconds(900), start.plusSeconds(900));
    }

    @ParameterizedTest
    @EnumSource(
            value = Fitted.class,
            names = {"BOTH", "COUNTER"})
    void a_swarm_whose_samples_were_lost_with_the_silence_is_told_from_the_totals_when_the_node_is_back(Fitted fitted) {
        Instant back = Instant.parse("2031-05-22T19:00:00Z");
        TrapDays days =
                quiet(5).swarm(1.4, Duration.ofMinutes(18)).crossings(0.1).until("22T23:00");

        WatchedTrap trap = new WatchedTrap(fitted).hears(days.silent("22T12:30", "22T19:00"));

        assertThat(trap.moveIns(Stage.RAISED))
                .singleElement()
                .satisfies(finding -> assertThat(finding.raised()).isBetween(back, back.plusSeconds(2400)));
    }

    @Test
    void a_quiet_trap_that_was_silent_for_hours_tells_no_swarm() {
        TrapDays days = quiet(6).crossings(1).until("22T19:00");
        assertThat(new WatchedTrap(Fitted.BOTH)
                        .hears(days.silent("22T14:12", "22T17:00"))
                        .moveIns(Stage.RAISED))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void readings_in_any_order_tell_the_same_swarm(long seed) {
        List<Sample> samples = new ArrayList<>(
                quiet(seed).swarm(1.1, Duration.ofMinutes(14)).until("22T16:00").samples());
        int shuffledFrom = samples.size() - 140;
        Collections.shuffle(samples.subList(shuffledFrom, samples.size()), new Random(seed));

        WatchedTrap trap = new WatchedTrap(Fitted.BOTH);
        Instant received = TrapDays.START;
        for (Sample sample : samples) {
            received = received.plusSeconds(60).isAfter(sample.time()) ? received.plusSeconds(60) : sample.time();
            trap.hears(List.of(sample), received);
        }

        List<Finding> standing = trap.watch().traps().iterator().next().findings().stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN && finding.standing())
                .toList();
        assertThat(standing).hasSize(1);
    }
}
