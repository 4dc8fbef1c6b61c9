package org.duskline.analyzer.watch;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import org.duskline.analyzer.detect.Beyond;
import org.duskline.analyzer.detect.Forecast;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.visit.Visit;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.LaneBlock;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/**
 * The watch over the whole line: samples in order of receipt go in, findings come out. No clock, no thread, no I/O; the
 * same for live readings and for a season replayed in seconds.
 */
public final class LineWatch {
    private final Map<String, TrapWatch> traps = new LinkedHashMap<>();
    private final Map<String, TrapSurroundings> surroundings = new LinkedHashMap<>();
    private final Function<String, InForce> inForce;
    private final Set<Beyond> without;
    private final boolean followsClosings;
    private Instant lastTick = Instant.MIN;

    /**
     * A watch under the same thresholds everywhere.
     *
     * @param thresholds what detection runs on
     * @param version their version, noted in each finding
     */
    public LineWatch(Thresholds thresholds, int version) {
        this(thresholds, version, Set.of());
    }

    /** @param without kinds of evidence that are left out, to see what they buy */
    public LineWatch(Thresholds thresholds, int version, Set<Beyond> without) {
        this(trap -> new InForce(version, thresholds), without, true);
    }

    /** @param inForce what holds at a trap, by its name; the same for as long as this watch lasts */
    public LineWatch(Function<String, InForce> inForce) {
        this(inForce, Set.of(), true);
    }

    private LineWatch(Function<String, InForce> inForce, Set<Beyond> without, boolean followsClosings) {
        this.inForce = inForce;
        this.without = without;
        this.followsClosings = followsClosings;
    }

    /** A watch that does not look after what was closed or carried away: no threshold changes that. */
    public static LineWatch overThePast(Function<String, InForce> inForce) {
        return new LineWatch(inForce, Set.of(), false);
    }

    /**
     * Puts a trap under watch, in place of an earlier watch over the same trap.
     *
     * @param known findings told before, which must not be told again
     */
    public void watch(Trap trap, Fitted fitted, List<Finding> known) {
        traps.put(trap.name(), new TrapWatch(trap, fitted, known, inForce.apply(trap.name()), followsClosings));
        surroundings.put(trap.name(), new TrapSurroundings(trap, traps.values(), without));
    }

    /** Says what the counter at a trap that is watched is made of, so that its losses can be put back. */
    public void counterIs(String trap, LaneBlock block) {
        traps.get(trap).counterIs(block);
    }

    public boolean watches(String trap) {
        return traps.containsKey(trap);
    }

    /**
     * Takes what one message brought for a trap.
     *
     * @param trap the trap's name
     * @param node the node that hung there when the samples were taken
     * @param samples in time order
     * @param received when the message reached us
     * @return the findings that are new or changed their stage
     */
    public List<Finding> take(String trap, String node, Fitted fitted, List<Sample> samples, Instant received) {
        List<Finding> changes = new ArrayList<>(tick(received));
        changes.addAll(traps.get(trap).take(node, fitted, samples, received, surroundings.get(trap)));
        return changes;
    }

    /**
     * Takes the visits to a trap, recorded now or long after, and looks at its past again under them.
     *
     * @param standing all visits to the trap that stand
     * @param now when they were written down or read
     * @return the findings that are new or changed their stage
     */
    public List<Finding> visited(String trap, List<Visit> standing, Instant now) {
        return traps.get(trap).visited(standing, now, surroundings.get(trap));
    }

    /** Lets time pass on the clock of receipt, so that silence is noticed. */
    public List<Finding> tick(Instant now) {
        List<Finding> changes = new ArrayList<>();
        if (lastTick == Instant.MIN || now.isAfter(lastTick.plusSeconds(60))) {
            lastTick = now;
            for (TrapWatch watch : traps.values()) {
                changes.addAll(watch.tick(now));
            }
        }
        return changes;
    }

    /** The condition of a trap. */
    public Condition condition(String trap) {
        return Optional.ofNullable(traps.get(trap)).map(TrapWatch::condition).orElse(Condition.UNHEARD);
    }

    /** The chance of a swarm at a trap, while it is scouted. */
    public Optional<Forecast> forecast(String trap) {
        return Optional.ofNullable(traps.get(trap)).flatMap(TrapWatch::forecast);
    }

    /**
     * How near a stretch came to a move-in, to scouting, to robbing and to a departure. Looks at the last nine days only.
     *
     * @param until first moment left out
     */
    public List<Nearest> nearest(String trap, Instant from, Instant until) {
        return traps.get(trap).nearest(from, until, surroundings.get(trap));
    }

    Collection<TrapWatch> traps() {
        return traps.values();
    }

    TrapSeries series(String trap) {
        return traps.get(trap).series();
    }
}
