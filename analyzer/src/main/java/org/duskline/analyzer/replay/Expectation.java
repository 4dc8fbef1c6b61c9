package org.duskline.analyzer.replay;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.SplittableRandom;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.stats.Interval;
import org.duskline.analyzer.stats.PoissonRate;
import org.duskline.analyzer.visit.Answer;

/**
 * What thresholds let a keeper expect, from the traps' own quiet days.
 *
 * <p>A day at a trap is quiet when it was heard and no swarm lives there: from a move-in that was answered a swarm, or
 * that strengthened and was not denied, the trap's later days are left out. A false alarm is a move-in on a quiet day
 * that was denied or withdrawn. Seasons are drawn from the quiet days in blocks of three consecutive ones, so that
 * weather that lasts is drawn whole (moving-block bootstrap, Kuensch 1989, Annals of Statistics 17, 1217). Where few
 * alarms were seen the bootstrap is too sure of itself, so the interval is widened to the exact one for the rate
 * (Garwood 1936).
 *
 * @param quietDays trap-days that this rests on
 * @param falseAlarms move-ins on them that were none
 * @param perSeason false alarms to expect in one trap's season; NaN without a quiet day
 * @param interval 95 % interval of the mean; from 0 to infinity without a quiet day
 * @param medianDelay from onset to telling, of the move-ins that were none of these; zero if there were none
 */
public record Expectation(int quietDays, int falseAlarms, double perSeason, Interval interval, Duration medianDelay) {
    private static final int BLOCK = 3;
    private static final int DRAWS = 1000;
    private static final long DAY_SECONDS = 86_400;
    private static final double CONFIDENCE = 0.95;

    /**
     * @param seasonDays days of one trap's season
     * @param seed of the draws; the same seed gives the same figures
     */
    public static Expectation of(Played played, List<Answer> answers, int seasonDays, long seed) {
        List<Integer> alarms = new ArrayList<>();
        for (Map.Entry<String, SortedSet<Long>> trap : played.days().entrySet()) {
            long occupied = occupiedFrom(trap.getKey(), played, answers);
            for (long day : trap.getValue()) {
                if (day < occupied) {
                    alarms.add(falseOn(trap.getKey(), day, played, answers));
                }
            }
        }
        int total = alarms.stream().mapToInt(Integer::intValue).sum();
        Duration delay = medianDelay(played, answers);
        if (alarms.isEmpty()) {
            return new Expectation(0, 0, Double.NaN, new Interval(0, Double.POSITIVE_INFINITY), delay);
        }
        Interval exact = new PoissonRate(total, alarms.size()).exact(CONFIDENCE);
        Interval drawn = drawn(alarms, seasonDays, seed);
        return new Expectation(
                alarms.size(),
                total,
                (double) total / alarms.size() * seasonDays,
                new Interval(
                        Math.min(drawn.low(), exact.low() * seasonDays),
                        Math.max(drawn.high(), exact.high() * seasonDays)),
                delay);
    }

    private static boolean isFalse(Told told, List<Answer> answers) {
        Comparison.Truth truth = Comparison.truth(told, answers);
        return truth == Comparison.Truth.FALSE || truth == Comparison.Truth.UNANSWERED && told.withdrawn();
    }

    private static boolean isSwarm(Told told, List<Answer> answers) {
        Comparison.Truth truth = Comparison.truth(told, answers);
        return truth == Comparison.Truth.SWARM
                || truth == Comparison.Truth.UNANSWERED && told.last().stage() == Stage.STRENGTHENED;
    }

    private static long occupiedFrom(String trap, Played played, List<Answer> answers) {
        return played.told().stream()
                .filter(told -> told.kind() == Kind.MOVE_IN && told.trap().equals(trap))
                .filter(told -> isSwarm(told, answers))
                .mapToLong(told -> day(told.onset()))
                .min()
                .orElse(Long.MAX_VALUE);
    }

    private static int falseOn(String trap, long day, Played played, List<Answer> answers) {
        return (int) played.told().stream()
                .filter(told -> told.kind() == Kind.MOVE_IN && told.trap().equals(trap))
                .filter(told -> day(told.onset()) == day && isFalse(told, answers))
                .count();
    }

    private static long day(Instant time) {
        return Math.floorDiv(time.getEpochSecond(), DAY_SECONDS);
    }

    /** Means over as many days as there are, each draw made of blocks, told per season. */
    private static Interval drawn(List<Integer> alarms, int seasonDays, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        double[] rates = new double[DRAWS];
        for (int draw = 0; draw < DRAWS; draw++) {
            int sum = 0;
            for (int day = 0; day < alarms.size(); day += BLOCK) {
                int start = dice.nextInt(alarms.size());
                for (int i = 0; i < BLOCK && day + i < alarms.size(); i++) {
                    sum += alarms.get((start + i) % alarms.size());
                }
            }
            rates[draw] = (double) sum / alarms.size() * seasonDays;
        }
        Arrays.sort(rates);
        return new Interval(rates[(int) (DRAWS * 0.025)], rates[(int) (DRAWS * 0.975)]);
    }

    private static Duration medianDelay(Played played, List<Answer> answers) {
        List<Duration> delays = played.told().stream()
                .filter(told -> told.kind() == Kind.MOVE_IN && !isFalse(told, answers))
                .map(Told::delay)
                .sorted()
                .toList();
        return delays.isEmpty() ? Duration.ZERO : delays.get(delays.size() / 2);
    }
}
