package org.duskline.collector.instruction;

import java.time.Instant;
import org.duskline.collector.wire.Acknowledgement;

/**
 * What a node last said of its settings.
 *
 * @param node the hardware's own name
 * @param received when it reached us; for one that a broker had kept, when it was handed over
 * @param fromStore whether the broker had kept it, so that it tells nothing of the moment
 * @param said what it said
 */
public record HeardAcknowledgement(String node, Instant received, boolean fromStore, Acknowledgement said) {
    /** Whether a tare is asked for that the node has not carried out. */
    public boolean hasYetToTare(Instruction newest) {
        return newest.state() == Instruction.State.IN_FORCE
                && said.tare().isPresent()
                && said.tare().getAsLong() != newest.settings().tare();
    }
}
