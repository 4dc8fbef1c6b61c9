package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Weather that is written: rains besides the drawn ones, and a spell that is kept fine but for them.
 *
 * @param rains besides the drawn ones
 * @param from fine from here, Unix seconds
 * @param until to here
 */
record Fair(List<Shower> rains, double from, double until) {
    /** Nothing is written. */
    static Fair asDrawn() {
        return new Fair(List.of(), 0, 0);
    }

    /** How much the weather is kept fine, 0 to 1, with half a day of change on either side. */
    double share(double t) {
        double change = 43_200;
        return Math.max(0, Math.min(1, Math.min(t - (from - change), until + change - t) / change));
    }

    List<Shower> over(List<Shower> drawn) {
        List<Shower> kept = new ArrayList<>(
                drawn.stream().filter(s -> s.end() < from || s.start() > until).toList());
        kept.addAll(rains);
        kept.sort(Comparator.comparingDouble(Shower::start));
        return List.copyOf(kept);
    }
}
