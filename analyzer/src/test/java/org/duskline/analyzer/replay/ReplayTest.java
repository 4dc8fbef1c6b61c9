package org.duskline.analyzer.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.IntStream;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.Season;
import org.duskline.analyzer.season.SeasonStream;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.Said;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.analyzer.watch.Analyzer;
import org.duskline.analyzer.watch.InForce;
import org.duskline.analyzer.watch.Nearest;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.wire.Message;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One invented season of three traps, stored once and played under several thresholds. */
class ReplayTest {
    private static final Thresholds NOW = Thresholds.defaults();
    private static final Thresholds DEAF = ThresholdText.read("{\"moveInOdds\": 100000, \"smallestSwarmKg\": 3}", NOW);

    private static final Replay.Progress NO_MATTER = (done, until, soFar) -> {};

    @TempDir
    static Path folder;

    private static Store store;
    private static Past past;
    private static Played now;

    @BeforeAll
    static void a_season_is_stored() {
        store = Store.open(folder.resolve("season.db"));
        Season season = Season.of(2, Level.TYPICAL, 30, 3);
        store.line()
                .put(
                        season.line().stream().map(watched -> watched.trap()).toList(),
                        season.line().stream().map(watched -> watched.fitting()).toList());
        season.line().stream()
                .filter(watched -> !Double.isNaN(watched.countsPerKg()))
                .map(watched -> new Calibration(
                        watched.fitting().node(), watched.fitting().from(), 0, watched.countsPerKg()))
                .forEach(store.line()::put);
        Collector collector = new Collector(store);
        List<Message> batch = new ArrayList<>();
        SeasonStream stream = season.play();
        while (stream.hasNext()) {
            batch.add(stream.next());
            if (batch.size() == 2000 || !stream.hasNext()) {
                collector.take(batch);
                batch.clear();
            }
        }
        store.jdbi()
                .useHandle(handle -> handle.execute(
                        "VACUUM INTO ?", folder.resolve("copy.db").toString()));
        past = Past.read(store);
        now = new Replay(past).run(NOW);
    }

    @AfterAll
    static void the_season_is_put_away() {
        store.close();
    }

    private static List<Told> moveIns() {
        return now.told().stream().filter(told -> told.kind() == Kind.MOVE_IN).toList();
    }

    private static Answer answer(Told told, Said said) {
        return new Answer(told.trap(), told.kind(), told.onset(), said, "", told.onset(), "keeper");
    }

    @Test
    void the_same_thresholds_tell_the_same() {
        assertThat(moveIns()).isNotEmpty();
        assertThat(Comparison.of(now, new Replay(past).run(NOW), List.of()).differences())
                .isEmpty();
    }

    @Test
    void a_replay_tells_what_the_live_watch_told() {
        FindingLog log = new FindingLog(store);
        new Analyzer(store, log, VisitLog.open(store), NOW, 1, (handle, changes) -> {}).advance();
        Set<Kind> ofTheKeepersVisits = EnumSet.of(Kind.GONE, Kind.LEAKING, Kind.OVERHEATING);
        assertThat(now.told())
                .extracting(told ->
                        told.trap() + told.kind() + told.onset() + told.first().raised())
                .containsExactlyInAnyOrderElementsOf(log.all().stream()
                        .filter(finding -> !ofTheKeepersVisits.contains(finding.kind()))
                        .map(finding -> finding.trap() + finding.kind() + finding.onset() + finding.raised())
                        .toList());
    }

    @Test
    void an_adopted_version_takes_effect_in_the_running_watch_and_is_noted_in_what_it_raises() {
        try (Store copy = Store.open(folder.resolve("copy.db"))) {
            AtomicReference<InForce> inForce = new AtomicReference<>(new InForce(2, DEAF));
            FindingLog log = new FindingLog(copy);
            Analyzer analyzer =
                    new Analyzer(copy, log, VisitLog.open(copy), trap -> inForce.get(), (handle, changes) -> {});
            analyzer.advance();
            List<Finding> before = log.all();
            inForce.set(new InForce(3, NOW));
            analyzer.advance();
            assertThat(before)
                    .allSatisfy(finding -> assertThat(finding.thresholds()).isEqualTo(2));
            assertThat(log.all())
                    .filteredOn(finding -> finding.kind() == Kind.MOVE_IN && finding.thresholds() == 3)
                    .isNotEmpty();
        }
    }

    @Test
    void deaf_thresholds_miss_what_was_answered_a_swarm_and_swapped_they_gain_it() {
        Played deaf = new Replay(past).run(DEAF);
        List<Answer> answers =
                moveIns().stream().map(told -> answer(told, Said.SWARM)).toList();
        int lost = Comparison.of(now, deaf, answers).moveIns(Comparison.Change.LOST, Comparison.Truth.SWARM);
        int gained = Comparison.of(deaf, now, answers).moveIns(Comparison.Change.GAINED, Comparison.Truth.SWARM);
        assertThat(lost).isPositive().isEqualTo(gained);
    }

    @Test
    void the_last_verdict_decides_whether_a_lost_alarm_is_a_loss() {
        Told first = moveIns().get(0);
        Played nothing = new Played(List.of(), now.days(), 0);
        List<Answer> corrected = List.of(answer(first, Said.SWARM), answer(first, Said.RAIN));
        assertThat(Comparison.of(now, nothing, corrected).differences())
                .filteredOn(difference -> difference.onset().equals(first.onset()) && difference.kind() == Kind.MOVE_IN)
                .extracting(Comparison.Event::truth)
                .containsExactly(Comparison.Truth.FALSE);
    }

    @Test
    void a_cancelled_replay_stops() {
        assertThatThrownBy(() -> new Replay(past).run(trap -> NOW, Instant.MIN, Instant.MAX, NO_MATTER, () -> true))
                .isInstanceOf(CancellationException.class);
    }

    @Test
    void a_drive_for_rain_a_missed_swarm_and_an_hour_cost_what_the_keeper_said() {
        Cost cost = new Cost(100, 20, 3);
        Told told = moveIns().get(0);
        assertThat(cost.of(answer(told, Said.RAIN), List.of(told))).isEqualTo(20);
        assertThat(cost.of(answer(told, Said.RAIN), List.of())).isZero();
        assertThat(cost.of(answer(told, Said.SWARM), List.of())).isEqualTo(100);
        assertThat(cost.of(answer(told, Said.SWARM), List.of(told)))
                .isEqualTo(Math.min(100, 3 * told.delay().toSeconds() / 3600.0));
    }

    @Test
    void denied_alarms_are_expected_again_and_the_same_seed_says_the_same() {
        List<Answer> denied =
                moveIns().stream().map(told -> answer(told, Said.RAIN)).toList();
        Expectation expected = Expectation.of(now, denied, 90, 5);
        assertThat(expected).isEqualTo(Expectation.of(now, denied, 90, 5));
        assertThat(expected.falseAlarms()).isEqualTo(moveIns().size());
        assertThat(expected.perSeason()).isPositive();
        assertThat(expected.interval().contains(expected.perSeason())).isTrue();
    }

    @Test
    void a_stretch_tells_only_what_was_raised_in_it() {
        Told last = moveIns().get(moveIns().size() - 1);
        Instant raised = last.first().raised();
        Played stretch = new Replay(past)
                .run(trap -> NOW, raised.minus(Duration.ofHours(1)), raised.plusSeconds(3600), NO_MATTER, () -> false);
        assertThat(stretch.told())
                .allSatisfy(told -> assertThat(told.first().raised())
                        .isBetween(raised.minus(Duration.ofHours(1)), raised.plusSeconds(3600)));
    }

    @Test
    void a_stretch_asked_about_reads_what_bears_on_it_alone_and_answers_like_the_whole() {
        Told last = moveIns().get(moveIns().size() - 1);
        Stretch day = new Stretch(
                last.onset().minus(Duration.ofHours(12)), last.onset().plus(Duration.ofHours(12)));
        FindingLog log = new FindingLog(store);
        List<Nearest> nearest =
                day.nearest(store, ThresholdBook.open(store), last.onset(), log, last.trap(), share -> {});
        assertThat(nearest)
                .isEqualTo(new Replay(past)
                        .nearest(trap -> NOW, last.trap(), day, log.ofTrap(last.trap(), Instant.MIN, Instant.MAX)));
        assertThat(nearest.get(0).heldBack()).isEqualTo("Nothing: it was told.");
        assertThat(day.messages(store)).isPositive().isLessThan(store.samples().lastPack());
    }

    @Test
    void a_swarm_that_was_told_weeks_before_still_lives_in_its_trap() {
        Told first = moveIns().get(0);
        Instant later = first.first().raised().plus(Duration.ofDays(11));
        Stretch day = new Stretch(later, later.plus(Duration.ofDays(1)));
        assertThat(departure(first, day, List.of(first.first())).heldBack()).doesNotContain("No swarm lived");
        assertThat(departure(first, day, List.of()).heldBack()).isEqualTo("No swarm lived in the trap.");
    }

    private static Nearest departure(Told moveIn, Stretch day, List<Finding> told) {
        return new Replay(past)
                .nearest(trap -> NOW, moveIn.trap(), day, told).stream()
                        .filter(one -> one.kind() == Kind.DEPARTURE)
                        .findFirst()
                        .orElseThrow();
    }

    private static Suggestion suggested(int cases, double saving, Thresholds now) {
        return Suggestion.search(
                now,
                thresholds -> IntStream.range(0, cases)
                        .mapToDouble(i -> thresholds.moveInOdds() == 80 ? 10 - saving : 10)
                        .toArray(),
                thresholds -> 0.0,
                0,
                0,
                1,
                () -> false);
    }

    @Test
    void three_answers_bend_nothing_and_a_steady_saving_is_found() {
        assertThat(suggested(3, 5, NOW).supported()).isFalse();
        assertThat(suggested(12, 0, NOW).thresholds()).isEqualTo(NOW);
        assertThat(suggested(12, 5, NOW).supported()).isTrue();
        assertThat(suggested(12, 5, NOW).thresholds().moveInOdds()).isEqualTo(80);
    }

    @Test
    void ballast_keeps_a_few_answers_from_harming_an_ordinary_line() {
        Suggestion suggestion = Suggestion.search(
                NOW,
                thresholds -> IntStream.range(0, 12)
                        .mapToDouble(i -> thresholds.moveInOdds() == 80 ? 5 : 10)
                        .toArray(),
                thresholds -> thresholds.moveInOdds() == 80 ? 9.0 : 1.0,
                30,
                50,
                1,
                () -> false);
        assertThat(suggestion.supported()).isFalse();
        assertThat(suggestion.thresholds()).isEqualTo(NOW);
    }

    @Test
    void a_misspelt_threshold_is_told_with_those_there_are() {
        assertThatThrownBy(() -> ThresholdText.read("{\"moveInOds\": 40}", NOW))
                .hasMessageContaining("moveInOds")
                .hasMessageContaining("smallestSwarmKg");
        assertThatThrownBy(() -> ThresholdText.read("{\"moveInOdds\": 0}", NOW))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must lie between");
    }
}
