package org.duskline.analyzer.evening;

import java.util.ArrayList;
import java.util.List;

/** What to bring for a round; common practice, for the keeper to add to. */
final class Packing {
    private Packing() {}

    static List<String> list(List<Stop> stops) {
        if (stops.isEmpty()) {
            return List.of();
        }
        int traps = stops.size();
        List<String> bring = new ArrayList<>(List.of(
                counted(traps, "mesh closure", "mesh closures") + ", and one to spare",
                counted(2 * traps, "strap", "straps"),
                "veil and gloves for everybody",
                "head lamp, and a red one to look at bees",
                "rope and pulley, ladder if the trap hangs high",
                "water sprayer, brush, sheet to set the box on",
                "tape for gaps",
                "charged phone, this sheet on paper",
                "what your doctor gave you against stings"));
        if (stops.stream().anyMatch(stop -> stop.lift().takesTwo())) {
            bring.add("a second person: one box may weigh " + Math.round(heaviest(stops)) + " kg");
        }
        bring.add(counted(traps, "empty box", "empty boxes") + " to hang in place, if you go on trapping");
        return List.copyOf(bring);
    }

    private static double heaviest(List<Stop> stops) {
        return stops.stream().mapToDouble(stop -> stop.lift().atMostKg()).max().orElse(0);
    }

    private static String counted(int count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }
}
