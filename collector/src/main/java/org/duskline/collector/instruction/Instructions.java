package org.duskline.collector.instruction;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.collector.intake.BrokerUnreachable;
import org.duskline.collector.wire.Acknowledgement;

/**
 * Tells nodes how to work. What is asked for is written down first and sent by {@link #send}, again and again until a
 * broker has it, so that it outlives a restart and a broker that is away. {@link #ask} may be called from any thread,
 * {@link #send} from one.
 */
public final class Instructions {
    private static final Duration CLOCK_MAY_BE_OFF = Duration.ofSeconds(5);
    private static final Duration BETWEEN_TIMES = Duration.ofMinutes(1);

    /** The way to the nodes. */
    @FunctionalInterface
    public interface Way {
        /** Leaves settings at the broker; returns when it has them. */
        void settings(String node, byte[] payload) throws BrokerUnreachable;
    }

    private final InstructionLog log;
    private final Way way;
    private final InstantSource clock;
    private final Map<String, Instant> timeTold = new HashMap<>();
    // Used by the sending thread alone.
    private long read;

    public Instructions(InstructionLog log, Way way, InstantSource clock) {
        this.log = log;
        this.way = way;
        this.clock = clock;
    }

    /**
     * Asks a node for other settings. The revision rises by one over all that the node was ever told.
     *
     * @param by who asks
     * @return what was written down, to be sent
     */
    public synchronized Instruction ask(String node, NodeSettings settings, String by) {
        long known = log.newest(node).map(Instruction::revision).orElse(0L);
        long inForce = log.heard(node).map(heard -> heard.said().revision()).orElse(0L);
        Instruction told = Instruction.fresh(node, Math.max(known, inForce) + 1, settings, clock.instant(), by);
        log.put(told);
        return told;
    }

    /**
     * Tells a node the last revision that it did not refuse once more, with the time of the sending. One that was never
     * told anything is told the usual.
     */
    public synchronized Instruction again(String node, String by) {
        Optional<Instruction> newest = log.newest(node);
        if (newest.isPresent() && newest.get().refused().isEmpty()) {
            log.resend(newest.get());
            return newest.get();
        }
        return ask(node, log.lastAgreed(node).map(Instruction::settings).orElse(NodeSettings.USUAL), by);
    }

    /**
     * Gets to know nodes that speak of settings for the first time, sends what waits, and gives the time to nodes whose
     * clock is off.
     *
     * @throws BrokerUnreachable if the broker is away; what waits goes on waiting
     */
    public void send() throws BrokerUnreachable {
        long last = log.lastNumber();
        List<HeardAcknowledgement> news = log.heardBetween(read, last);
        read = last;
        news.forEach(this::greet);
        for (Instruction told : log.unsent()) {
            tell(told);
            log.sent(told, clock.instant());
        }
        for (HeardAcknowledgement heard : news) {
            setClock(heard);
        }
    }

    /**
     * A node must be told a tare number once before any tare is wanted: it takes the first that it hears as the one to
     * begin with. A revision beyond ours was told by somebody else, and is taken over.
     */
    private synchronized void greet(HeardAcknowledgement heard) {
        Acknowledgement said = heard.said();
        Optional<Instruction> newest = log.newest(heard.node());
        if (newest.isPresent() && newest.get().revision() >= said.revision()) {
            return;
        }
        NodeSettings settings = NodeSettings.of(said);
        if (said.revision() == 0 || said.tare().isEmpty()) {
            log.put(Instruction.fresh(heard.node(), said.revision() + 1, settings, clock.instant(), ""));
        } else {
            log.put(new Instruction(
                    heard.node(),
                    said.revision(),
                    settings,
                    heard.received(),
                    "",
                    Optional.of(heard.received()),
                    Optional.of(heard.received()),
                    Optional.empty()));
        }
    }

    /** One from before our start, or from the broker's store, says nothing about the node's clock of today. */
    private void setClock(HeardAcknowledgement heard) throws BrokerUnreachable {
        Instant now = clock.instant();
        Instant told = timeTold.getOrDefault(heard.node(), Instant.EPOCH);
        boolean ofNow = !heard.fromStore() && !heard.received().isBefore(now.minus(BETWEEN_TIMES));
        if (ofNow && isOff(heard) && !now.isBefore(told.plus(BETWEEN_TIMES))) {
            tell(log.newest(heard.node()).orElseThrow());
        }
    }

    private static boolean isOff(HeardAcknowledgement heard) {
        if (heard.said().clockSeconds().isEmpty()) {
            return true;
        }
        Duration off = Duration.between(
                Instant.ofEpochSecond(heard.said().clockSeconds().getAsLong()), heard.received());
        return off.abs().compareTo(CLOCK_MAY_BE_OFF) > 0;
    }

    private void tell(Instruction told) throws BrokerUnreachable {
        Instant now = clock.instant();
        log.tried(told, now);
        way.settings(told.node(), SettingsPack.write(told, now));
        timeTold.put(told.node(), now);
    }
}
