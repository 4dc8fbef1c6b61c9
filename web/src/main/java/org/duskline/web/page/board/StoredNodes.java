package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.duskline.collector.instruction.InstructionLog;
import org.duskline.collector.instruction.Instructions;
import org.duskline.collector.instruction.NodeSettings;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.HeardPack;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;

/** The nodes over the one database file. */
public final class StoredNodes implements Nodes {
    private static final int PACKS_JUDGED = 40;
    private static final int DAMAGES_SHOWN = 5;
    private static final int TOLD_SHOWN = 12;
    private static final Duration READ_BACK = Duration.ofDays(7);

    private final Store store;
    private final StoredDrift drifts;
    private final InstructionLog told;
    private final Instructions instructions;
    private final Supplier<BrokerLink> link;
    private final InstantSource clock;

    public StoredNodes(
            Store store,
            InstructionLog told,
            Instructions instructions,
            Supplier<BrokerLink> link,
            InstantSource clock) {
        this.store = store;
        this.drifts = new StoredDrift(store);
        this.told = told;
        this.instructions = instructions;
        this.link = link;
        this.clock = clock;
    }

    @Override
    public Optional<NodeDetail> node(String name) {
        return StoreWatchboard.reading(() -> {
            Optional<HeardNode> heard = store.nodes().find(name);
            List<Fitting> fittings = store.line().fittingsOf(name).stream()
                    .sorted(Comparator.comparing(Fitting::from).reversed())
                    .toList();
            return heard.isEmpty() && fittings.isEmpty()
                    ? Optional.empty()
                    : Optional.of(detail(name, heard, fittings));
        });
    }

    @Override
    public void ask(String node, NodeSettings settings, String by) {
        StoreWatchboard.reading(() -> instructions.ask(node, settings, by));
    }

    @Override
    public void tellTime(String node, String by) {
        StoreWatchboard.reading(() -> instructions.again(node, by));
    }

    private NodeDetail detail(String name, Optional<HeardNode> heard, List<Fitting> fittings) {
        Instant now = clock.instant();
        List<HeardPack> packs = store.nodes().packs(name, PACKS_JUDGED);
        return new NodeDetail(
                now,
                link.get(),
                name,
                zone(fittings),
                fittings,
                heard,
                NodePace.of(packs),
                packs.stream()
                        .map(HeardPack::last)
                        .max(Comparator.naturalOrder())
                        .map(last -> readings(name, last)),
                store.damages().countOfNode(name),
                store.damages().ofNode(name, DAMAGES_SHOWN),
                store.line().calibrations(name).stream()
                        .sorted(Comparator.comparing(Calibration::from).reversed())
                        .toList(),
                heard.flatMap(node -> drifts.of(name, node.lastHeard())),
                store.line().laneBlock(name, now),
                told.of(name, TOLD_SHOWN),
                told.heard(name));
    }

    private NodeDetail.Readings readings(String name, Instant last) {
        NodeReadings readings = new NodeReadings();
        store.samples().read(name, last.minus(READ_BACK), last.plusMillis(1), readings);
        return readings.summary(last);
    }

    private ZoneId zone(List<Fitting> fittings) {
        List<Trap> traps = store.line().traps();
        Optional<String> hangs = fittings.stream().map(Fitting::trap).findFirst();
        return traps.stream()
                .filter(trap -> hangs.isEmpty() || trap.name().equals(hangs.get()))
                .map(Trap::zone)
                .findFirst()
                .orElse(ZoneOffset.UTC);
    }
}
