package org.duskline.collector.instruction;

import java.time.Instant;
import java.util.Optional;

/**
 * One revision of what a node was told.
 *
 * @param node the hardware's own name
 * @param revision raised by one with each change, from 1
 * @param settings what it is to do
 * @param asked when it was asked for
 * @param by who asked; empty for the program itself
 * @param sent when a broker had it; empty while it waits for the broker
 * @param settled when the node acknowledged or refused it; empty while it waits for the node
 * @param refused what the node found fault with
 */
public record Instruction(
        String node,
        long revision,
        NodeSettings settings,
        Instant asked,
        String by,
        Optional<Instant> sent,
        Optional<Instant> settled,
        Optional<String> refused) {

    /** How it stands. */
    public enum State {
        WAITS_FOR_BROKER,
        WAITS_FOR_NODE,
        IN_FORCE,
        REFUSED
    }

    public State state() {
        if (refused.isPresent()) {
            return State.REFUSED;
        }
        if (settled.isPresent()) {
            return State.IN_FORCE;
        }
        return sent.isPresent() ? State.WAITS_FOR_NODE : State.WAITS_FOR_BROKER;
    }

    /** Asked for and not yet on its way. */
    static Instruction fresh(String node, long revision, NodeSettings settings, Instant asked, String by) {
        return new Instruction(
                node, revision, settings, asked, by, Optional.empty(), Optional.empty(), Optional.empty());
    }
}
