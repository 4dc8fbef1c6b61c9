package org.duskline.analyzer.prove;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.duskline.analyzer.season.Spell;
import org.duskline.analyzer.season.TrapTruth;

/**
 * Something at a trap that could have misled a detector.
 *
 * @param start Unix seconds
 * @param end Unix seconds
 * @param what in the keeper's words
 */
record Cause(double start, double end, String what) {
    private static final double HOUR = 3600;
    private static final double NEAR = 2 * HOUR;
    private static final double AT_ONCE = 900;
    private static final double FOR_GOOD = 365 * 86400.0;
    private static final Set<String> SHARP = Set.of("handling", "tare jump", "departure");
    private static final Set<String> SCALE_FAULTS = Set.of("spike", "stuck_weight", "saturated");
    private static final Set<String> COUNTER_ONLY = Set.of(
            "glare",
            "neighbour flights",
            "strays",
            "scouting",
            "lodger: ants",
            "lodger: spider",
            "lodger: wasp",
            "counter fault");
    private static final Set<String> SCALE_ONLY = Set.of("tare jump", "wind", "scale fault", "lodger: bird on the lid");
    private static final Set<String> WEIGHT_ALONE =
            Set.of("tare jump", "wind", "scale fault", "lodger: bird on the lid", "rain");

    /** All that could mislead at this trap, those left out that its sensors cannot see. */
    static List<Cause> at(TrapTruth trap) {
        List<Cause> all = new ArrayList<>();
        add(all, trap.handlings(), h -> "handling");
        add(all, trap.bareHook(), h -> "bare hook");
        add(all, trap.departures(), d -> "departure");
        add(all, trap.rain(), r -> "rain");
        add(all, trap.storms(), s -> "wind");
        add(all, trap.robbings(), r -> "robbing");
        add(all, trap.sunGlare(), g -> "glare");
        add(all, trap.scoutingsWithoutArrival(), s -> "scouting");
        add(all, trap.neighbourFlights(), n -> "neighbour flights");
        add(all, trap.strays(), s -> "strays");
        add(all, trap.offline(), o -> "offline");
        add(all, trap.lodgers(), Cause::lodger);
        add(all, trap.sensorFaults(), Cause::fault);
        trap.reboots().forEach(r -> all.add(new Cause(r.at(), r.at(), "restart")));
        for (TrapTruth.Arrival arrival : trap.arrivals()) {
            all.add(new Cause(arrival.scoutsStart(), arrival.start(), "scouting"));
            all.add(new Cause(arrival.start(), stayEnd(trap, arrival), "colony"));
        }
        Set<String> blind = switch (trap.fitted()) {
            case "scale" -> COUNTER_ONLY;
            case "counter" -> SCALE_ONLY;
            default -> Set.of();
        };
        all.removeIf(cause -> blind.contains(cause.what) || cause.what.equals("node gone"));
        return all;
    }

    private static <S extends Spell> void add(List<Cause> all, Collection<S> spells, Function<S, String> what) {
        spells.forEach(spell -> all.add(new Cause(spell.start(), spell.end(), what.apply(spell))));
    }

    private static String lodger(TrapTruth.Lodger lodger) {
        return "lodger: " + (lodger.what().equals("perch") ? "bird on the lid" : lodger.kind());
    }

    private static String fault(TrapTruth.Fault fault) {
        if (fault.kind().equals("tare_jump")) {
            return "tare jump";
        }
        if (SCALE_FAULTS.contains(fault.kind())) {
            return "scale fault";
        }
        return fault.kind().equals("died") ? "node gone" : "counter fault";
    }

    private static double stayEnd(TrapTruth trap, TrapTruth.Arrival arrival) {
        if (!Double.isNaN(arrival.collectedAt())) {
            return arrival.collectedAt();
        }
        return trap.departures().stream()
                .filter(d -> d.start() > arrival.end())
                .mapToDouble(TrapTruth.Departure::end)
                .min()
                .orElse(arrival.end() + FOR_GOOD);
    }

    /**
     * The nearest cause within two hours; of equally near ones the sharpest, then the shortest. What acts on the weight
     * alone comes last for alarms that are drawn from traffic.
     */
    static String nearest(List<Cause> causes, double onset, boolean fromTraffic) {
        String best = "none";
        double[] bestKey = null;
        for (Cause cause : causes) {
            double away = Math.max(Math.max(cause.start - onset, onset - cause.end), 0);
            if (away > NEAR) {
                continue;
            }
            double[] key = {
                fromTraffic && WEIGHT_ALONE.contains(cause.what) ? 1 : 0,
                Math.max(away, AT_ONCE),
                SHARP.contains(cause.what) ? 0 : 1,
                cause.end - cause.start
            };
            if (bestKey == null || Arrays.compare(key, bestKey) < 0) {
                best = cause.what;
                bestKey = key;
            }
        }
        return best;
    }
}
