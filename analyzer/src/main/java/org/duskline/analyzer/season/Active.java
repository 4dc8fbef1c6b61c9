package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Consumer;

/** Spells that are under way, for a clock that only goes forward; keeps a long season's list from being walked. */
final class Active<S extends Spell> {
    private final List<S> sorted;
    private final List<S> now = new ArrayList<>();
    private int next;

    Active(List<S> spells) {
        this.sorted = new ArrayList<>(spells);
        this.sorted.sort(Comparator.comparingDouble(Spell::start));
    }

    void forEach(double t, Consumer<S> action) {
        while (next < sorted.size() && sorted.get(next).start() <= t) {
            now.add(sorted.get(next++));
        }
        if (!now.isEmpty()) {
            now.removeIf(s -> s.end() <= t);
            now.forEach(action);
        }
    }
}
