package org.duskline.analyzer.replay;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.LongPredicate;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.prove.PlayedSeason;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.Season;
import org.duskline.analyzer.season.TrapTruth;
import org.duskline.analyzer.stats.Interval;
import org.duskline.analyzer.stats.PoissonRate;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.Said;
import org.junit.jupiter.api.Test;

/** The false alarms that a keeper is told to expect, beside what then comes. */
class ExpectationTest {
    private static final int SEASON_DAYS = 90;
    private static final long DAY_SECONDS = 86_400;

    @Test
    void without_a_quiet_day_nothing_is_promised() {
        Expectation expected = Expectation.of(new Played(List.of(), Map.of(), 0), List.of(), SEASON_DAYS, 1);

        assertThat(expected.perSeason()).isNaN();
        assertThat(expected.interval().high()).isInfinite();
    }

    /** Garwood 1936 by the chi-squared quantiles: none seen leaves up to 3.689 (a value recalled from memory). */
    @Test
    void no_false_alarm_in_a_season_still_leaves_room_for_three_or_four_in_the_next() {
        Expectation expected = Expectation.of(quietTrap(SEASON_DAYS), List.of(), SEASON_DAYS, 1);

        assertThat(expected.perSeason()).isZero();
        assertThat(expected.interval().low()).isZero();
        assertThat(expected.interval().high()).isBetween(3.68, 3.70);
    }

    @Test
    void days_after_a_swarm_has_moved_in_do_not_count() {
        Played played = quietTrap(60);
        Finding swarm = moveIn("A", 30, Stage.STRENGTHENED);
        Played taken = new Played(List.of(new Told(swarm, swarm)), played.days(), 0);

        assertThat(Expectation.of(taken, List.of(), SEASON_DAYS, 1).quietDays()).isEqualTo(30);
    }

    @Test
    void what_is_computed_covers_what_is_simulated_also_where_bad_weather_lasts_for_days() {
        SplittableRandom dice = new SplittableRandom(20);
        double truth = 0.02;
        int covered = 0;
        int lines = 300;
        for (int line = 0; line < lines; line++) {
            Interval interval = Expectation.of(wetLine(dice.split(), 6, 60, truth), List.of(), SEASON_DAYS, line)
                    .interval();
            covered += interval.contains(truth * SEASON_DAYS) ? 1 : 0;
        }
        assertThat(covered / (double) lines).isGreaterThan(0.9);
    }

    /** A line among gardens under thresholds so low that it errs often: the first half tells what the second brings. */
    @Test
    void the_first_half_of_a_season_tells_the_false_alarms_of_the_second() {
        Thresholds jumpy = ThresholdText.read("{\"moveInOdds\": 1, \"smallestSwarmKg\": 0.05}", Thresholds.defaults());
        try (PlayedSeason season = new PlayedSeason(Season.amongGardens(11, Level.HARSH, 60, 6), done -> {})) {
            Played all = new Replay(Past.read(season.store())).run(jumpy);
            List<Answer> answers = answers(all, season.truth().traps());
            long middle = all.days().values().stream()
                            .mapToLong(days -> days.first() + days.last())
                            .max()
                            .orElseThrow()
                    / 2;
            Expectation first = Expectation.of(only(all, day -> day < middle), answers, SEASON_DAYS, 1);
            Expectation second = Expectation.of(only(all, day -> day >= middle), answers, SEASON_DAYS, 1);

            assertThat(first.falseAlarms()).isPositive();
            assertThat(second.falseAlarms()).isPositive();
            Interval came = new PoissonRate(second.falseAlarms(), second.quietDays()).exact(0.95);
            assertThat(first.interval().low()).isLessThan(came.high() * SEASON_DAYS);
            assertThat(first.interval().high()).isGreaterThan(came.low() * SEASON_DAYS);
        }
    }

    private static List<Answer> answers(Played played, List<TrapTruth> truth) {
        return played.told().stream()
                .filter(told -> told.kind() == Kind.MOVE_IN)
                .map(told -> new Answer(
                        told.trap(),
                        told.kind(),
                        told.onset(),
                        isSwarm(told, truth) ? Said.SWARM : Said.OTHER,
                        "",
                        told.first().raised(),
                        "keeper"))
                .toList();
    }

    private static boolean isSwarm(Told told, List<TrapTruth> truth) {
        return truth.stream()
                .filter(trap -> trap.trap().equals(told.trap()))
                .flatMap(trap -> trap.arrivals().stream())
                .anyMatch(arrival -> Ballast.fits(told, arrival));
    }

    private static Played only(Played all, LongPredicate which) {
        Map<String, SortedSet<Long>> days = new HashMap<>();
        all.days().forEach((trap, its) -> {
            SortedSet<Long> kept = new TreeSet<>(its);
            kept.removeIf(day -> !which.test(day));
            days.put(trap, kept);
        });
        return new Played(all.told(), days, all.samples());
    }

    private static Played quietTrap(int days) {
        return new Played(List.of(), Map.of("A", days(days)), 0);
    }

    private static SortedSet<Long> days(int days) {
        SortedSet<Long> all = new TreeSet<>();
        for (long day = 0; day < days; day++) {
            all.add(day);
        }
        return all;
    }

    /** Traps whose false alarms come in wet spells of three days, a third of the days being wet. */
    private static Played wetLine(SplittableRandom dice, int traps, int days, double rate) {
        List<Told> told = new ArrayList<>();
        Map<String, SortedSet<Long>> heard = new HashMap<>();
        for (int trap = 0; trap < traps; trap++) {
            String name = "T" + trap;
            heard.put(name, days(days));
            boolean wet = false;
            for (int day = 0; day < days; day++) {
                wet = day % 3 == 0 ? dice.nextDouble() < 1.0 / 3 : wet;
                if (wet && dice.nextDouble() < 3 * rate) {
                    Finding finding = moveIn(name, day, Stage.WITHDRAWN);
                    told.add(new Told(finding, finding));
                }
            }
        }
        return new Played(told, heard, 0);
    }

    private static Finding moveIn(String trap, int day, Stage stage) {
        Instant onset = Instant.ofEpochSecond(day * DAY_SECONDS + 40_000);
        return new Finding(
                trap,
                "n",
                Kind.MOVE_IN,
                onset,
                onset.plusSeconds(600),
                stage,
                onset.plusSeconds(900),
                0.9,
                "invented",
                List.of(),
                Map.of(),
                Optional.empty(),
                1);
    }
}
