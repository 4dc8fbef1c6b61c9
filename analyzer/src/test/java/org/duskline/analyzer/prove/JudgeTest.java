package org.duskline.analyzer.prove;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.TrapTruth;
import org.junit.jupiter.api.Test;

/** The definitions are those of the labelled recordings' notes. */
class JudgeTest {
    /** 2026-05-12, 11:00 UTC: noon and a half by the sun at 15 degrees east. */
    private static final double NOON = Instant.parse("2026-05-12T11:00:00Z").getEpochSecond();

    private static final double HOUR = 3600;

    private static TrapTruth trap(String fitted, List<TrapTruth.Arrival> arrivals, List<TrapTruth.Rain> rain) {
        return new TrapTruth(
                "Heron Gap",
                "b101",
                fitted,
                60,
                1,
                48,
                15,
                "Europe/Berlin",
                50,
                arrivals,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                rain,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static TrapTruth.Arrival arrival() {
        return new TrapTruth.Arrival(
                NOON - 6 * HOUR,
                NOON,
                NOON + 600,
                NOON + 1200,
                1.4,
                5,
                3,
                20,
                false,
                "straight",
                Double.NaN,
                NOON + 720,
                0.5);
    }

    private static Finding finding(Kind kind, double onset, double raised) {
        return new Finding(
                "Heron Gap",
                "b101",
                kind,
                instant(onset),
                instant(raised),
                Stage.RAISED,
                instant(raised),
                0.9,
                "",
                List.of(),
                Map.of(),
                Optional.empty(),
                1);
    }

    private static Instant instant(double second) {
        return Instant.ofEpochMilli(Math.round(second * 1000));
    }

    private static JudgedTrap judge(TrapTruth trap, Finding... findings) {
        return Judge.judge("typical", trap, List.of(findings));
    }

    @Test
    void the_first_fitting_move_in_counts_and_a_further_one_is_a_repeat() {
        JudgedTrap judged = judge(
                trap("both", List.of(arrival()), List.of()),
                finding(Kind.MOVE_IN, NOON, NOON + 900),
                finding(Kind.MOVE_IN, NOON + 300, NOON + 1500));
        JudgedArrival told = judged.arrivals().get(0);
        assertEquals(5, told.delayMinutes(), 1e-9);
        assertEquals(3, told.afterHeardMinutes(), 1e-9);
        assertEquals(1, told.repeats());
        assertEquals(Map.of(), judged.falseMoveIns());
        assertEquals(true, told.evening());
    }

    @Test
    void a_move_in_told_before_the_first_bees_is_false_and_laid_to_the_scouts() {
        JudgedTrap judged =
                judge(trap("both", List.of(arrival()), List.of()), finding(Kind.MOVE_IN, NOON - HOUR, NOON - 120));
        assertTrue(Double.isNaN(judged.arrivals().get(0).raised()));
        assertEquals(Map.of("scouting", 1), judged.falseMoveIns());
    }

    @Test
    void a_false_move_in_is_laid_to_the_rain_that_fell_within_two_hours() {
        TrapTruth.Rain rain = new TrapTruth.Rain(NOON - 2 * HOUR, NOON - HOUR, 8, false);
        assertEquals(
                Map.of("rain", 1),
                judge(trap("scale", List.of(), List.of(rain)), finding(Kind.MOVE_IN, NOON, NOON + 600))
                        .falseMoveIns());
        assertEquals(
                Map.of("none", 1),
                judge(trap("scale", List.of(), List.of(rain)), finding(Kind.MOVE_IN, NOON + 2 * HOUR, NOON + 3 * HOUR))
                        .falseMoveIns());
    }

    @Test
    void scouts_told_hours_ahead_are_counted_by_their_first_finding() {
        JudgedTrap judged = judge(
                trap("counter", List.of(arrival()), List.of()),
                finding(Kind.SCOUTING, NOON - 5 * HOUR, NOON - 4 * HOUR),
                finding(Kind.SCOUTING, NOON - 2 * HOUR, NOON - HOUR),
                finding(Kind.SCOUTING, NOON - 50 * HOUR, NOON - 40 * HOUR));
        assertEquals(4, judged.arrivals().get(0).warnedHours(), 1e-9);
        assertEquals(2, judged.trueScoutings());
        assertEquals(Map.of("none", 1), judged.falseScoutings());
        Figures figures = new Figures(List.of(judged));
        assertEquals(1, figures.announced(3).successes());
        assertEquals(2.0, figures.falseScoutings().estimate(), 1e-9);
    }

    @Test
    void an_arrival_that_ended_towards_evening_is_not_asked_for_the_same_evening() {
        TrapTruth.Arrival late = new TrapTruth.Arrival(
                NOON,
                NOON + 6 * HOUR,
                NOON + 6.2 * HOUR,
                NOON + 6.4 * HOUR,
                1,
                0,
                1,
                3,
                true,
                "branch",
                Double.NaN,
                Double.NaN,
                Double.NaN);
        assertEquals(
                null,
                judge(trap("both", List.of(late), List.of())).arrivals().get(0).evening());
    }

    @Test
    void quantiles_lie_between_their_order_statistics() {
        // Exact nonparametric interval for the median of ten values: ranks 2 and 9, coverage 0.9785 (computed from the
        // binomial law: 1 - 2 (1 + 10) / 1024).
        double[] ten = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
        assertEquals(5.5, Figures.quantile(ten, 0.5), 1e-12);
        assertEquals(2, Figures.quantileInterval(ten, 0.5)[0], 1e-12);
        assertEquals(9, Figures.quantileInterval(ten, 0.5)[1], 1e-12);
    }

    @Test
    void a_small_proof_reports_every_level_it_played() {
        Proof proof = new Proof(
                new ProofSize(1, 2, 4, new double[] {5, 50}), 3, List.of(Level.CLEAN), Thresholds.defaults(), true);
        double[] last = {0};
        ProofResult result = proof.run((done, doing) -> {
            assertTrue(done >= last[0] && done <= 1);
            last[0] = done;
        });
        assertEquals(1, last[0], 1e-9);
        assertTrue(result.table().contains("clean: 2 traps"), result.table());
        assertTrue(result.table().contains("without the warmth of the box"), result.table());
        assertTrue(result.tradeOffSvg().startsWith("<svg"));
    }

    @Test
    void of_many_mistakes_the_worst_are_told_and_no_more_than_some_of_a_kind() {
        TrapTruth trap = trap("both", List.of(), List.of());
        List<Mistake> all = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            all.add(new Mistake(60 - i, "A swarm was told that was none", trap, i, "rain", List.of()));
        }
        all.add(new Mistake(5, "A colony left and nothing was said", trap, 9, "departure", List.of()));
        List<Mistake> worst = Mistake.worst(all, 10, 3);
        assertEquals(4, worst.size());
        assertEquals(60, worst.get(0).cost());
        assertEquals("departure", worst.get(3).cause());
    }
}
