package org.duskline.web.page.board;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;

/**
 * The whole line read at once, since asking the file trap by trap costs a connection each time.
 *
 * @param traps by name
 * @param fittings by trap, in time order
 * @param nodes by their own name
 * @param standing the findings that stand
 */
record LineAtOnce(
        List<Trap> traps, Map<String, List<Fitting>> fittings, Map<String, HeardNode> nodes, List<Finding> standing) {

    static LineAtOnce read(Store store, FindingLog findings) {
        return new LineAtOnce(
                store.line().traps(),
                store.line().fittings().stream().collect(Collectors.groupingBy(Fitting::trap)),
                store.nodes().all().stream().collect(Collectors.toMap(HeardNode::name, Function.identity())),
                findings.standing());
    }

    /** What hangs in the trap now, or hung there last. */
    Optional<Fitting> latestIn(String trap) {
        return fittings.getOrDefault(trap, List.of()).stream()
                .reduce((one, other) -> other.from().isBefore(one.from()) ? one : other);
    }

    Optional<HeardNode> heardThere(Fitting fitting) {
        return Optional.ofNullable(nodes.get(fitting.node()))
                .filter(node -> !node.lastHeard().isBefore(fitting.from()));
    }

    List<LooseNode> looseNodes(Instant now) {
        return nodes.values().stream()
                .filter(node -> fittings.values().stream()
                        .flatMap(List::stream)
                        .noneMatch(fitting -> fitting.node().equals(node.name()) && fitting.covers(now)))
                .map(node -> new LooseNode(node.name(), node.firstHeard(), node.lastHeard()))
                .sorted((one, other) -> one.node().compareTo(other.node()))
                .toList();
    }
}
