package org.duskline.web.page;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.duskline.analyzer.evening.Place;
import org.duskline.collector.trap.Trap;

/**
 * What a trap's curve is set beside: its own earlier days in the same hours, or a neighbour.
 *
 * @param key how it stands in an address; empty for nothing
 * @param label how it is offered
 * @param curves the curves that are drawn quietly behind
 */
public record Beside(String key, String label, List<Other> curves) {
    /** Beside nothing. */
    static final Beside NOTHING = new Beside("", "nothing", List.of());

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int MOST_NEIGHBOURS = 8;
    private static final String NEIGHBOUR = "trap:";

    public Beside {
        curves = List.copyOf(curves);
    }

    /**
     * One curve beside.
     *
     * @param said what it is, such as "the day before"
     * @param trap whose it is
     * @param back how much earlier it was
     */
    public record Other(String said, String trap, Duration back) {
        boolean neighbour() {
            return back.isZero();
        }
    }

    /** All that is offered at a trap: nothing first, the nearest neighbours last. */
    static List<Beside> offered(Trap trap, List<Trap> line) {
        List<Beside> all = new ArrayList<>();
        all.add(NOTHING);
        all.add(days("day", "the day before", trap, 1, 1));
        all.add(days("3days", "the three days before", trap, 1, 3));
        all.add(days("week", "the same day a week before", trap, 7, 7));
        Place here = place(trap);
        line.stream()
                .filter(other -> !other.name().equals(trap.name()))
                .sorted(Comparator.comparingDouble(other -> here.kmTo(place(other))))
                .limit(MOST_NEIGHBOURS)
                .map(other -> neighbour(other, here.kmTo(place(other))))
                .forEach(all::add);
        return all;
    }

    private static Beside days(String key, String label, Trap trap, int first, int last) {
        List<Other> days = IntStream.rangeClosed(first, last)
                .mapToObj(day -> new Other(
                        day == 1 ? "the day before" : day + " days before", trap.name(), Duration.ofDays(day)))
                .toList();
        return new Beside(key, label, days);
    }

    private static Beside neighbour(Trap other, double km) {
        return new Beside(
                NEIGHBOUR + other.name(),
                other.name() + ", " + Words.km(km) + " km off",
                List.of(new Other(other.name(), other.name(), Duration.ZERO)));
    }

    private static Place place(Trap trap) {
        return new Place(trap.latitude(), trap.longitude());
    }

    /**
     * Finds what an address asks for.
     *
     * @param key as in the address; null for nothing
     * @throws BadRequest if it is none of those offered
     */
    static Beside read(String key, List<Beside> offered) {
        return offered.stream()
                .filter(one -> one.key().equals(key == null ? "" : key))
                .findFirst()
                .orElseThrow(() -> new BadRequest("A curve can't be set beside \"" + key
                        + "\". Choose day, 3days, week, or trap: and the name of one of the nearest traps."));
    }

    /** For the script that draws them. */
    public String json() {
        try {
            return JSON.writeValueAsString(curves.stream()
                    .map(one -> Map.of(
                            "said",
                            one.said(),
                            "address",
                            TrapAddress.of(one.trap()),
                            "back",
                            one.back().toSeconds(),
                            "neighbour",
                            one.neighbour()))
                    .toList());
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("The curves beside can't be written.", impossible);
        }
    }
}
