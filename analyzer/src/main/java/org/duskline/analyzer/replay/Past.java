package org.duskline.analyzer.replay;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Arrival;
import org.duskline.collector.store.SampleLog;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.LaneBlock;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/**
 * Everything recorded on the line, decoded once and kept in memory, so that a replay under other thresholds reads nothing
 * again. Some fifty bytes a sample. Reading more needs one thread and no replay at the same time.
 */
public final class Past {
    private static final int ARRIVALS_AT_ONCE = 2000;

    /**
     * What one message brought to one trap.
     *
     * @param owner which fitting
     * @param first index of its first sample there
     * @param count of its samples
     */
    record Brought(int owner, int first, int count, long receivedMillis) {}

    private final Store store;
    private final List<Trap> traps;
    private final List<FittingPast> fittings = new ArrayList<>();
    private final Map<String, List<Integer>> byNode = new HashMap<>();
    private final List<Calibration> calibrations;
    private final List<LaneBlock> counters;
    private final Map<String, List<Visit>> visits = new HashMap<>();
    private long[] received = new long[256];
    private int[] owner = new int[256];
    private int[] first = new int[256];
    private int[] count = new int[256];
    private int size;
    private long cursor;

    private Past(Store store) {
        this.store = store;
        this.traps = store.line().traps();
        this.calibrations = ofEveryNode(store, store.line()::calibrations);
        this.counters = ofEveryNode(store, store.line()::laneBlocks);
        for (Fitting fitting : store.line().fittings()) {
            if (traps.stream().anyMatch(trap -> trap.name().equals(fitting.trap()))) {
                byNode.computeIfAbsent(fitting.node(), node -> new ArrayList<>())
                        .add(fittings.size());
                fittings.add(new FittingPast(fitting));
            }
        }
    }

    /**
     * Reads everything recorded.
     *
     * @param progress told the share that has been read, 0 to 1
     * @throws CancellationException once {@code cancelled} says so
     */
    public static Past read(Store store, DoubleConsumer progress, BooleanSupplier cancelled) {
        Past past = new Past(store);
        past.catchUp(progress, cancelled);
        return past;
    }

    /** Reads everything recorded. */
    public static Past read(Store store) {
        return read(store, done -> {}, () -> false);
    }

    /** Reads what was received from an instant on until before another; it is not to be caught up. */
    static Past between(Store store, Instant from, Instant until, DoubleConsumer progress) {
        Past past = new Past(store);
        past.readVisits();
        SampleLog.PackRange packs = store.samples().received(from, until);
        past.cursor = Math.max(0, packs.first() - 1);
        while (past.cursor < packs.last()) {
            List<Arrival> arrivals = store.samples().arrivalsAfter(past.cursor, ARRIVALS_AT_ONCE);
            arrivals.stream()
                    .filter(one ->
                            !one.received().isBefore(from) && one.received().isBefore(until))
                    .forEach(past::take);
            past.cursor = arrivals.get(arrivals.size() - 1).pack();
            progress.accept(Math.min(1, (past.cursor - packs.first() + 1) / (double) packs.size()));
        }
        return past;
    }

    private void readVisits() {
        VisitLog log = VisitLog.open(store);
        traps.forEach(trap -> visits.put(
                trap.name(), log.of(trap.name()).stream().map(KeptVisit::visit).toList()));
    }

    /** Reads what has arrived since the last reading. */
    public void catchUp(DoubleConsumer progress, BooleanSupplier cancelled) {
        readVisits();
        long begun = cursor;
        double whole = Math.max(1, store.samples().lastPack() - begun);
        List<Arrival> arrivals = store.samples().arrivalsAfter(cursor, ARRIVALS_AT_ONCE);
        while (!arrivals.isEmpty()) {
            if (cancelled.getAsBoolean()) {
                throw new CancellationException("Reading the past was cancelled; nothing was changed.");
            }
            arrivals.forEach(this::take);
            cursor = arrivals.get(arrivals.size() - 1).pack();
            progress.accept(Math.min(1, (cursor - begun) / whole));
            arrivals = store.samples().arrivalsAfter(cursor, ARRIVALS_AT_ONCE);
        }
    }

    /** Whether traps, fittings, calibrations and counters are still those that it was read with. */
    public boolean ofSameLine() {
        return traps.equals(store.line().traps())
                && fittings.stream()
                        .map(FittingPast::fitting)
                        .toList()
                        .equals(store.line().fittings())
                && calibrations.equals(ofEveryNode(store, store.line()::calibrations))
                && counters.equals(ofEveryNode(store, store.line()::laneBlocks));
    }

    private static <T> List<T> ofEveryNode(Store store, Function<String, List<T>> known) {
        return store.line().fittings().stream()
                .map(Fitting::node)
                .distinct()
                .flatMap(node -> known.apply(node).stream())
                .toList();
    }

    /** What the counter of a node was made of, the latest last. */
    List<LaneBlock> counters(String node) {
        return counters.stream().filter(block -> block.node().equals(node)).toList();
    }

    private void take(Arrival arrival) {
        int last = -1;
        for (Sample sample : arrival.samples()) {
            int at = ownerOf(arrival.node(), sample.timeMillis());
            if (at < 0) {
                last = -1;
                continue;
            }
            if (at != last) {
                begin(at, arrival.received().toEpochMilli());
                last = at;
            }
            fittings.get(at).add(sample);
            count[size - 1]++;
        }
    }

    private void begin(int at, long receivedMillis) {
        if (size == received.length) {
            received = Arrays.copyOf(received, size * 2);
            owner = Arrays.copyOf(owner, size * 2);
            first = Arrays.copyOf(first, size * 2);
            count = Arrays.copyOf(count, size * 2);
        }
        received[size] = receivedMillis;
        owner[size] = at;
        first[size++] = fittings.get(at).size();
    }

    private int ownerOf(String node, long timeMillis) {
        for (int at : byNode.getOrDefault(node, List.of())) {
            Fitting fitting = fittings.get(at).fitting();
            boolean begun = fitting.from().equals(Instant.MIN)
                    || timeMillis >= fitting.from().toEpochMilli();
            if (begun
                    && (fitting.until().equals(Instant.MAX)
                            || timeMillis < fitting.until().toEpochMilli())) {
                return at;
            }
        }
        return -1;
    }

    /** Receipt of the first message; {@link Instant#MIN} before there is one. */
    public Instant firstReceived() {
        return size == 0 ? Instant.MIN : Instant.ofEpochMilli(received[0]);
    }

    /** Receipt of the last message; {@link Instant#MIN} before there is one. */
    public Instant lastReceived() {
        return size == 0 ? Instant.MIN : Instant.ofEpochMilli(received[size - 1]);
    }

    List<Trap> traps() {
        return traps;
    }

    /** The keeper's visits to a trap, as they stood at the last reading. */
    List<Visit> visits(String trap) {
        return visits.getOrDefault(trap, List.of());
    }

    List<FittingPast> fittings() {
        return fittings;
    }

    /** How many messages there are. */
    int size() {
        return size;
    }

    long receivedMillis(int index) {
        return received[index];
    }

    Brought brought(int index) {
        return new Brought(owner[index], first[index], count[index], received[index]);
    }
}
