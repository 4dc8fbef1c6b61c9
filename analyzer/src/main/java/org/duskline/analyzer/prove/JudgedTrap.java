package org.duskline.analyzer.prove;

import java.util.List;
import java.util.Map;

/**
 * What the findings at one trap are worth.
 *
 * @param level of its season
 * @param fitted both, counter or scale
 * @param periodSeconds between samples
 * @param days watched
 * @param arrivals the true arrivals
 * @param falseMoveIns by cause
 * @param episodes scoutings that came to nothing
 * @param episodesSeen of them found
 * @param trueScoutings scouting findings that touch a scouting
 * @param falseScoutings by cause
 * @param departures true ones
 * @param departuresFound of them
 * @param departuresFalse neither a departure nor a collection
 * @param robbings true ones
 * @param robbingsFound of them
 * @param robbingsFalse touching none
 * @param certainties what each move-in said of itself, and whether it was one
 */
record JudgedTrap(
        String level,
        String fitted,
        int periodSeconds,
        double days,
        List<JudgedArrival> arrivals,
        Map<String, Integer> falseMoveIns,
        int episodes,
        int episodesSeen,
        int trueScoutings,
        Map<String, Integer> falseScoutings,
        int departures,
        int departuresFound,
        int departuresFalse,
        int robbings,
        int robbingsFound,
        int robbingsFalse,
        List<Certainty> certainties) {

    /** A move-in's own probability and whether it was right. */
    record Certainty(double said, boolean right) {}

    JudgedTrap {
        arrivals = List.copyOf(arrivals);
        falseMoveIns = Map.copyOf(falseMoveIns);
        falseScoutings = Map.copyOf(falseScoutings);
        certainties = List.copyOf(certainties);
    }

    static int sum(Map<String, Integer> tally) {
        return tally.values().stream().mapToInt(Integer::intValue).sum();
    }
}
