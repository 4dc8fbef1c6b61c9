package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineWatchTest {
    private static final Duration TWO_MINUTES = Duration.ofMinutes(2);

    private final LineWatch watch = new LineWatch(Thresholds.defaults(), 1);

    private TrapDays quiet(long seed) {
        return new TrapDays(seed, TWO_MINUTES).until("22T12:30");
    }

    private List<Finding> live(Fitted fitted, List<Sample> samples) {
        watch.watch(TrapDays.TRAP, fitted, List.of());
        List<Finding> findings = new ArrayList<>();
        for (Sample sample : samples) {
            findings.addAll(take(TrapDays.TRAP, fitted, List.of(sample), sample.time()));
        }
        return findings;
    }

    private List<Finding> take(Trap trap, Fitted fitted, List<Sample> samples, Instant received) {
        return watch.take(trap.name(), "n01", fitted, samples, received);
    }

    private static List<Finding> raised(List<Finding> findings, Kind kind) {
        return findings.stream()
                .filter(finding -> finding.kind() == kind && finding.stage() == Stage.RAISED)
                .toList();
    }

    @ParameterizedTest
    @EnumSource(Fitted.class)
    void a_swarm_at_noon_is_told_once_while_it_enters(Fitted fitted) {
        TrapDays days = quiet(1);
        Instant start = days.now();
        days.swarm(1.4, Duration.ofMinutes(18)).until("23T09:00");

        List<Finding> told = raised(live(fitted, days.samples()), Kind.MOVE_IN);

        assertThat(told).hasSize(1);
        assertThat(told.get(0).onset()).isBetween(start.minusSeconds(900), start.plusSeconds(900));
        assertThat(told.get(0).raised()).isBetween(start, start.plusSeconds(30 * 60));
        assertThat(told.get(0).evidence()).isNotEmpty();
        assertThat(told.get(0).rivals().values().stream()
                        .mapToDouble(Double::doubleValue)
                        .sum())
                .isBetween(0.99, 1.01);
    }

    @Test
    void a_swarm_that_stayed_past_dusk_is_borne_out_and_its_weight_is_known() {
        List<Finding> findings = live(
                Fitted.BOTH,
                quiet(2).swarm(1.4, Duration.ofMinutes(18)).until("22T23:00").samples());

        Finding strengthened = findings.stream()
                .filter(finding -> finding.stage() == Stage.STRENGTHENED)
                .findFirst()
                .orElseThrow();
        assertThat(strengthened.size().orElseThrow().kg()).isBetween(1.2, 1.6);
        assertThat(watch.condition(TrapDays.TRAP.name())).isEqualTo(Condition.OCCUPIED);
    }

    @ParameterizedTest
    @EnumSource(Fitted.class)
    void a_swarm_that_arrives_while_the_node_is_out_of_range_is_told_once_when_the_news_comes(Fitted fitted) {
        TrapDays days = quiet(3);
        Instant start = days.now();
        List<Sample> samples =
                days.swarm(1.4, Duration.ofMinutes(18)).until("23T18:00").samples();
        watch.watch(TrapDays.TRAP, fitted, List.of());
        List<Sample> before =
                samples.stream().filter(sample -> sample.time().isBefore(start)).toList();
        List<Sample> late = samples.stream()
                .filter(sample -> !sample.time().isBefore(start))
                .toList();
        for (Sample sample : before) {
            take(TrapDays.TRAP, fitted, List.of(sample), sample.time());
        }

        Instant news = Instant.parse("2031-05-23T18:05:00Z");
        List<Finding> findings = new ArrayList<>(take(TrapDays.TRAP, fitted, late, news));
        findings.addAll(take(TrapDays.TRAP, fitted, late, news.plusSeconds(60)));

        List<Finding> told = raised(findings, Kind.MOVE_IN);
        assertThat(told).hasSize(1);
        assertThat(told.get(0).raised()).isEqualTo(news);
        assertThat(told.get(0).onset()).isBetween(start.minusSeconds(900), start.plusSeconds(900));
    }

    @ParameterizedTest
    @EnumSource(
            value = Fitted.class,
            names = {"BOTH", "COUNTER"})
    void a_swarm_whose_samples_were_lost_with_the_silence_is_told_from_the_totals_when_the_node_is_back(Fitted fitted) {
        TrapDays days = quiet(5);
        Instant silent = days.now();
        days.swarm(1.4, Duration.ofMinutes(18));
        Instant back = Instant.parse("2031-05-22T19:00:00Z");
        List<Sample> heard = days.crossings(0.1).until("22T23:00").samples().stream()
                .filter(sample ->
                        sample.time().isBefore(silent) || sample.time().isAfter(back))
                .toList();

        List<Finding> told = raised(live(fitted, heard), Kind.MOVE_IN);

        assertThat(told)
                .singleElement()
                .satisfies(finding -> assertThat(finding.raised()).isBetween(back, back.plusSeconds(2400)));
    }

    @Test
    void a_quiet_trap_that_was_silent_for_hours_tells_no_swarm() {
        TrapDays days = quiet(6).crossings(1).until("22T19:00");
        Instant back = Instant.parse("2031-05-22T17:00:00Z");
        List<Sample> heard = days.samples().stream()
                .filter(sample -> sample.time().isBefore(back.minusSeconds(10_000))
                        || sample.time().isAfter(back))
                .toList();

        assertThat(raised(live(Fitted.BOTH, heard), Kind.MOVE_IN)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void readings_in_any_order_tell_the_same_swarm(long seed) {
        List<Sample> samples = new ArrayList<>(
                quiet(seed).swarm(1.1, Duration.ofMinutes(14)).until("22T16:00").samples());
        watch.watch(TrapDays.TRAP, Fitted.BOTH, List.of());
        int shuffledFrom = samples.size() - 140;
        Collections.shuffle(samples.subList(shuffledFrom, samples.size()), new Random(seed));

        List<Finding> findings = new ArrayList<>();
        Instant received = TrapDays.START;
        for (Sample sample : samples) {
            received = received.plusSeconds(60).isAfter(sample.time()) ? received.plusSeconds(60) : sample.time();
            findings.addAll(take(TrapDays.TRAP, Fitted.BOTH, List.of(sample), received));
        }

        List<Finding> standing = watch.traps().iterator().next().findings().stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN && finding.standing())
                .toList();
        assertThat(standing).hasSize(1);
    }

    @Test
    void scouts_are_told_hours_ahead_and_not_again_while_they_last() {
        TrapDays days = new TrapDays(4, TWO_MINUTES).until("22T09:30");
        for (String[] hour :
                new String[][] {{"22T10:00", "0.3"}, {"22T10:30", "0.8"}, {"22T11:00", "1.4"}, {"22T15:00", "3"}}) {
            days.crossings(Double.parseDouble(hour[1])).until(hour[0]);
        }
        List<Finding> told = raised(live(Fitted.BOTH, days.samples()), Kind.SCOUTING);
        assertThat(told).hasSize(1);
        assertThat(told.get(0).raised()).isBefore(Instant.parse("2031-05-22T12:30:00Z"));
    }

    @Test
    void glare_that_starts_at_once_is_not_scouts() {
        TrapDays days = new TrapDays(5, TWO_MINUTES)
                .until("22T11:00")
                .crossings(18)
                .until("22T11:50")
                .crossings(0)
                .until("22T18:00");
        assertThat(raised(live(Fitted.BOTH, days.samples()), Kind.SCOUTING)).isEmpty();
    }

    @Test
    void a_web_that_fills_the_gate_at_once_is_not_scouts_because_strays_came_by_before() {
        TrapDays days = new TrapDays(7, TWO_MINUTES)
                .until("22T08:00")
                .crossings(0.35)
                .until("22T13:00")
                .crossings(5)
                .until("22T16:00");
        assertThat(raised(live(Fitted.BOTH, days.samples()), Kind.SCOUTING)).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(
            value = Fitted.class,
            names = {"BOTH", "SCALE"})
    void a_scale_that_jumps_is_a_tare_shift_and_no_swarm(Fitted fitted) {
        List<Finding> findings =
                live(fitted, quiet(6).jump(0.8).until("22T20:00").samples());
        assertThat(raised(findings, Kind.MOVE_IN)).isEmpty();
        assertThat(raised(findings, Kind.TARE_SHIFT)).hasSize(1);
    }

    @ParameterizedTest
    @EnumSource(
            value = Fitted.class,
            names = {"BOTH", "SCALE"})
    void hands_at_the_trap_are_a_disturbance_and_no_swarm(Fitted fitted) {
        List<Finding> findings = live(
                fitted, quiet(7).hands(Duration.ofMinutes(14)).until("22T20:00").samples());
        assertThat(raised(findings, Kind.MOVE_IN)).isEmpty();
        assertThat(raised(findings, Kind.DISTURBED)).hasSize(1);
    }

    @Test
    void rain_that_reaches_the_neighbours_too_is_no_swarm_even_for_a_lone_scale() {
        watch.watch(TrapDays.TRAP, Fitted.SCALE, List.of());
        List<Trap> neighbours = new ArrayList<>();
        List<List<Sample>> theirs = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            Trap trap = new Trap("Neighbour " + i, 47.0 + i * 0.02, 8.0, ZoneId.of("UTC"));
            watch.watch(trap, Fitted.SCALE, List.of());
            neighbours.add(trap);
            theirs.add(quiet(20 + i)
                    .rain(0.3 + 0.1 * i, Duration.ofMinutes(50))
                    .until("22T18:00")
                    .samples());
        }
        List<Sample> own =
                quiet(8).rain(0.7, Duration.ofMinutes(50)).until("22T18:00").samples();

        List<Finding> findings = new ArrayList<>();
        for (int k = 0; k < own.size(); k++) {
            for (int i = 0; i < neighbours.size(); i++) {
                findings.addAll(take(
                        neighbours.get(i),
                        Fitted.SCALE,
                        List.of(theirs.get(i).get(k)),
                        own.get(k).time()));
            }
            findings.addAll(take(
                    TrapDays.TRAP, Fitted.SCALE, List.of(own.get(k)), own.get(k).time()));
        }
        assertThat(raised(findings, Kind.MOVE_IN)).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Fitted.class)
    void two_swarms_in_the_same_minute_are_both_told_and_are_not_taken_for_rain(Fitted fitted) {
        List<Trap> line = new ArrayList<>();
        List<List<Sample>> theirs = new ArrayList<>();
        for (int i = 1; i <= 3; i++) {
            Trap trap = new Trap("Trap " + i, 47.0 + i * 0.02, 8.0, ZoneId.of("UTC"));
            watch.watch(trap, fitted, List.of());
            line.add(trap);
            TrapDays days = quiet(30 + i);
            theirs.add((i < 3 ? days.swarm(1.3, Duration.ofMinutes(16)) : days)
                    .until("22T18:00")
                    .samples());
        }
        List<Finding> findings = new ArrayList<>();
        for (int k = 0; k < theirs.stream().mapToInt(List::size).min().orElseThrow(); k++) {
            for (int i = 0; i < line.size(); i++) {
                Sample sample = theirs.get(i).get(k);
                findings.addAll(take(line.get(i), fitted, List.of(sample), sample.time()));
            }
        }
        assertThat(raised(findings, Kind.MOVE_IN))
                .extracting(Finding::trap)
                .containsExactlyInAnyOrder("Trap 1", "Trap 2");
    }

    @ParameterizedTest
    @EnumSource(Fitted.class)
    void a_colony_that_leaves_is_a_departure_and_the_trap_is_free_again(Fitted fitted) {
        TrapDays days = quiet(9).swarm(1.4, Duration.ofMinutes(18))
                .crossings(20)
                .until("24T11:00")
                .leave(1.4, Duration.ofMinutes(12))
                .crossings(0)
                .until("24T19:00");
        List<Finding> findings = live(fitted, days.samples());
        assertThat(raised(findings, Kind.DEPARTURE)).hasSize(1);
        assertThat(raised(findings, Kind.MOVE_IN)).hasSize(1);
    }

    @Test
    void silence_is_told_once_and_ends_when_the_node_is_heard_again() {
        List<Sample> samples = quiet(10).samples();
        List<Finding> findings = new ArrayList<>(live(Fitted.BOTH, samples));
        Instant last = samples.get(samples.size() - 1).time();
        findings.addAll(watch.tick(last.plus(Duration.ofHours(7))));
        findings.addAll(watch.tick(last.plus(Duration.ofHours(9))));
        assertThat(raised(findings, Kind.UNHEARD)).hasSize(1);
        assertThat(watch.condition(TrapDays.TRAP.name())).isEqualTo(Condition.UNHEARD);
    }

    @Test
    void what_was_told_before_a_restart_is_not_told_again() {
        List<Sample> samples =
                quiet(15).swarm(1.4, Duration.ofMinutes(18)).until("22T16:00").samples();
        List<Finding> known = raised(live(Fitted.BOTH, samples), Kind.MOVE_IN);

        LineWatch restarted = new LineWatch(Thresholds.defaults(), 1);
        restarted.watch(TrapDays.TRAP, Fitted.BOTH, known);
        List<Finding> again = new ArrayList<>();
        for (Sample sample : samples) {
            again.addAll(restarted.take(TrapDays.TRAP.name(), "n01", Fitted.BOTH, List.of(sample), sample.time()));
        }
        assertThat(raised(again, Kind.MOVE_IN)).isEmpty();
    }
}
