package org.duskline.analyzer.prove;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.season.DemoSeason;
import org.junit.jupiter.api.Test;

class DemoSeasonTest {
    private final DemoSeason demo = new DemoSeason();

    @Test
    void two_minutes_of_watching_show_scouts_robbers_and_a_move_in_and_one_false_alarm_lies_behind() {
        List<Finding> findings;
        try (PlayedSeason played = new PlayedSeason(demo.season(), share -> {})) {
            findings = played.fold(Thresholds.defaults(), share -> {});
        }
        Instant seen = DemoSeason.after(Duration.ofMinutes(2));
        assertTrue(told(findings, Kind.MOVE_IN, "Ropewalk", seen), "a swarm moves in at Ropewalk");
        assertTrue(told(findings, Kind.SCOUTING, "Signal Barn", seen), "scouts at Signal Barn");
        assertTrue(told(findings, Kind.ROBBING, "Cistern Yard", seen), "robbers at Cistern Yard");
        List<Finding> wrong = findings.stream()
                .filter(f -> f.kind() == Kind.MOVE_IN && f.trap().equals("Saltpan Gate"))
                .toList();
        assertEquals(1, wrong.size());
        Duration away =
                Duration.between(demo.falseAlarm(), wrong.get(0).onset()).abs();
        assertTrue(away.compareTo(Duration.ofMinutes(10)) < 0, "the hose's water is taken for a swarm: " + away);
        assertTrue(wrong.get(0).raised().isBefore(DemoSeason.watchedFrom()));
        long caught = findings.stream()
                .filter(f -> f.kind() == Kind.MOVE_IN && f.raised().isBefore(DemoSeason.watchedFrom()))
                .count();
        assertEquals(5, caught, "four swarms and the false alarm lie behind");
    }

    private static boolean told(List<Finding> findings, Kind kind, String trap, Instant until) {
        return findings.stream()
                .anyMatch(f -> f.kind() == kind
                        && f.trap().equals(trap)
                        && f.raised().isAfter(DemoSeason.watchedFrom())
                        && f.raised().isBefore(until));
    }

    @Test
    void every_scene_comes_within_two_minutes_of_watching() {
        Instant last = DemoSeason.watchedFrom();
        for (DemoSeason.Scene scene : demo.scenes()) {
            assertTrue(!scene.at().isBefore(last));
            assertTrue(scene.at().isBefore(DemoSeason.after(Duration.ofMinutes(2))), scene.what());
            last = scene.at();
        }
    }

    @Test
    void the_trial_has_one_trap_of_each_arm_in_every_pair() {
        assertEquals(10, demo.line().size());
        Map<Integer, Long> arms = demo.setups().stream()
                .collect(Collectors.groupingBy(
                        DemoSeason.Setup::pair,
                        Collectors.mapping(DemoSeason.Setup::lure, Collectors.collectingAndThen(Collectors.toSet(), s ->
                                (long) s.size()))));
        assertEquals(Map.of(1, 2L, 2, 2L, 3, 2L, 4, 2L, 5, 2L), arms);
    }
}
