package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.drift.ScaleDrift;
import org.duskline.collector.instruction.HeardAcknowledgement;
import org.duskline.collector.instruction.Instruction;
import org.duskline.collector.instruction.NodeSettings;
import org.duskline.collector.store.HeardNode;
import org.duskline.collector.store.KeptDamage;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.LaneBlock;

/**
 * Everything a node's own page shows.
 *
 * @param now the instant it was looked at
 * @param link the connection to the broker
 * @param name the hardware's own name
 * @param zone the time zone of the trap that it hangs or hung in
 * @param fittings where it hung, the last first
 * @param heard when it was heard; empty when it never was
 * @param pace how it sends; empty without messages
 * @param readings what it measured lately; empty without samples
 * @param damages how many of its messages could not be read
 * @param lastDamages the last of these, latest first
 * @param calibrations its calibrations, the last first
 * @param drift what its scale does with temperature; empty where too little was measured to tell
 * @param counter what its counter is made of; empty where nobody has said
 * @param told what it was told, the last first
 * @param acknowledged what it last said to it; empty if it never did
 */
public record NodeDetail(
        Instant now,
        BrokerLink link,
        String name,
        ZoneId zone,
        List<Fitting> fittings,
        Optional<HeardNode> heard,
        Optional<Pace> pace,
        Optional<Readings> readings,
        long damages,
        List<KeptDamage> lastDamages,
        List<Calibration> calibrations,
        Optional<ScaleDrift> drift,
        Optional<LaneBlock> counter,
        List<Instruction> told,
        Optional<HeardAcknowledgement> acknowledged) {

    /**
     * How a node sends, by its last messages.
     *
     * @param usualDelay median of how old a message's newest sample was at its receipt
     * @param longestDelay the longest of these
     * @param between median distance of the receipts; empty for a node that was heard once
     */
    public record Pace(Duration usualDelay, Duration longestDelay, Optional<Duration> between) {}

    /**
     * What a node measured in the week before its last sample.
     *
     * @param newest time of the last sample
     * @param between median distance of the samples; empty with fewer than two
     * @param quantities what it measures, in words
     * @param batteryVolts last battery voltage; NaN when it sends none
     * @param boot how often it had started at the last sample; -1 when it does not say
     * @param starts how often it started in that week; 0 when it does not say
     */
    public record Readings(
            Instant newest,
            Optional<Duration> between,
            List<String> quantities,
            double batteryVolts,
            long boot,
            long starts) {
        public Readings {
            quantities = List.copyOf(quantities);
        }
    }

    public NodeDetail {
        fittings = List.copyOf(fittings);
        lastDamages = List.copyOf(lastDamages);
        calibrations = List.copyOf(calibrations);
        told = List.copyOf(told);
    }

    /** Where it hangs now. */
    public Optional<Fitting> fitting() {
        return fittings.stream().filter(fitting -> fitting.covers(now)).findFirst();
    }

    /** The last thing that it was told. */
    public Optional<Instruction> newest() {
        return told.stream().findFirst();
    }

    /**
     * What a change starts from: what was asked for last, unless the node refused that; then what it says is in force.
     */
    public NodeSettings startingFrom() {
        return told.stream()
                .filter(one -> one.refused().isEmpty())
                .findFirst()
                .map(Instruction::settings)
                .orElse(NodeSettings.USUAL);
    }

    /** Whether a tare would be carried out: a node takes the first number that it hears as the one to begin with. */
    public boolean canTare() {
        return acknowledged
                .filter(heard -> heard.said().tare().isPresent() && heard.said().revision() > 0)
                .isPresent();
    }
}
