package org.duskline.analyzer.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.duskline.collector.store.Arrival;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/**
 * Which node hung in which trap and when, over the whole line: a node that was moved to another trap may send samples of
 * both in one message.
 *
 * @param byNode fittings by the node's name
 */
record Fittings(Map<String, List<Fitting>> byNode) {
    static final Fittings NONE = new Fittings(Map.of());

    /** What one node sensed in one trap, in time order. */
    record Stretch(Fitting fitting, List<Sample> samples) {}

    static Fittings of(List<Fitting> fittings) {
        Map<String, List<Fitting>> byNode = new HashMap<>();
        for (Fitting fitting : fittings) {
            byNode.computeIfAbsent(fitting.node(), node -> new ArrayList<>()).add(fitting);
        }
        return new Fittings(byNode);
    }

    Stream<Fitting> all() {
        return byNode.values().stream().flatMap(List::stream);
    }

    /** What was hung in a trap last; empty where nothing ever was. */
    Optional<Fitting> last(Trap trap) {
        return all().filter(fitting -> fitting.trap().equals(trap.name()))
                .reduce((one, other) -> one.from().isAfter(other.from()) ? one : other);
    }

    /** What a message brought, by the trap in which it was sensed; what was sensed while the node hung nowhere is left out. */
    List<Stretch> stretches(Arrival arrival) {
        List<Stretch> stretches = new ArrayList<>();
        Fitting current = null;
        for (Sample sample : arrival.samples()) {
            Fitting fitting = at(arrival.node(), sample.time());
            if (fitting != null && fitting != current) {
                stretches.add(new Stretch(fitting, new ArrayList<>()));
            }
            if (fitting != null) {
                stretches.get(stretches.size() - 1).samples().add(sample);
            }
            current = fitting;
        }
        return stretches;
    }

    private Fitting at(String node, Instant time) {
        for (Fitting fitting : byNode.getOrDefault(node, List.of())) {
            if (fitting.covers(time)) {
                return fitting;
            }
        }
        return null;
    }
}
