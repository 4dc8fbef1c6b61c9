package org.duskline.analyzer.evening;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Rival;

/** What would settle a doubtful move-in, from what it may be instead and from what the trap is not fitted with. */
final class Settling {
    private static final double WORTH_NAMING = 0.05;
    private static final Map<Rival, String> TESTS = Map.ofEntries(
            Map.entry(Rival.SCOUTS, "Scouts go home: no bee at the entrance after dusk means that no swarm is in."),
            Map.entry(Rival.HANDS, "Ask who was at the trap at that hour, and record the visit."),
            Map.entry(
                    Rival.TARE_SHIFT,
                    "A scale that jumped stays exactly where it is: bees make it lighter in the morning and heavier by dusk."),
            Map.entry(Rival.RAIN, "Rain dries off within hours to days, and the traps near by got heavier too."),
            Map.entry(Rival.BIRD, "Look at the entrance from below: grass or moss in it, and a bird by day only."),
            Map.entry(Rival.MOUSE, "Look for droppings and chewed frames; a mouse comes at night."),
            Map.entry(Rival.BUMBLEBEES, "Look who flies: bumblebees come singly."),
            Map.entry(
                    Rival.ROBBERS,
                    "Robbers fight at the entrance and leave at dusk, and the box gets lighter, not heavier."),
            Map.entry(Rival.GLARE, "Counts that come back at the same hour of each clear day are sun in the gates."),
            Map.entry(Rival.ANTS, "Look for ants at the entrance and on the hanger."),
            Map.entry(Rival.WIND, "Wait for the wind to drop: its shaking leaves no weight behind."),
            Map.entry(Rival.SUN_DRIFT, "See whether the weight is still there once the box has cooled down."),
            Map.entry(Rival.RESTART, "See whether the node restarted at that moment; its page says so."));

    private Settling() {}

    static List<String> of(TrapTonight tonight, Finding moveIn) {
        List<String> settles = new ArrayList<>();
        moveIn.rivals().entrySet().stream()
                .filter(entry -> entry.getValue() >= WORTH_NAMING && TESTS.containsKey(entry.getKey()))
                .sorted(Map.Entry.<Rival, Double>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(entry -> TESTS.get(entry.getKey()))
                .forEach(settles::add);
        if (!tonight.fitted().hasCounter()) {
            settles.add("It has no counter: listen at the box after dark, from the ground where you can.");
        }
        if (!tonight.fitted().hasScale()) {
            settles.add("It has no scale: lift one corner gently, or tap the box and listen.");
        }
        if (!tonight.boxThermometer()) {
            settles.add("It has no thermometer inside: a hand on the lid late at night feels a cluster's warmth.");
        }
        settles.add(
                "Tomorrow between eight and eleven: bees that fly straight in and out, some with pollen, live there.");
        return settles;
    }
}
