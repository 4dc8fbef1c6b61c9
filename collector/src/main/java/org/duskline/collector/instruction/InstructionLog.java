package org.duskline.collector.instruction;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.duskline.collector.store.Store;
import org.duskline.collector.wire.Acknowledgement;
import org.duskline.collector.wire.Acknowledgement.QuickMode;
import org.duskline.collector.wire.Message;
import org.duskline.collector.wire.UnreadableMessage;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Every revision that a node was told, and what it last said to it. Safe for use by many threads. */
public final class InstructionLog {
    private static final String SELECT = "SELECT node, revision, asked_ms, asked_by, period_s, quick_period_s, quick,"
            + " tare, sent_ms, settled_ms, refused FROM instruction ";

    private static final String HEARD = "SELECT node, received_ms, from_store, payload FROM acknowledgement ";

    private final Jdbi jdbi;

    private InstructionLog(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** Opens the log in the store's file, creating its tables if needed. */
    public static InstructionLog open(Store store) {
        store.migrate("instruction_history", "classpath:org/duskline/collector/instruction");
        return new InstructionLog(store.jdbi());
    }

    /** What a node was told, latest first. */
    public List<Instruction> of(String node, int limit) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "WHERE node = :node ORDER BY revision DESC LIMIT :limit")
                        .bind("node", node)
                        .bind("limit", limit)
                        .map((row, context) -> instruction(row))
                        .list());
    }

    /** The last thing that a node was told. */
    public Optional<Instruction> newest(String node) {
        return of(node, 1).stream().findFirst();
    }

    /** The last thing that a node was told and did not refuse. */
    Optional<Instruction> lastAgreed(String node) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        SELECT + "WHERE node = :node AND refused IS NULL ORDER BY revision DESC LIMIT 1")
                .bind("node", node)
                .map((row, context) -> instruction(row))
                .findOne());
    }

    /** Of each node the last thing that it was told, if no broker has it yet. */
    List<Instruction> unsent() {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "WHERE sent_ms IS NULL AND revision ="
                        + " (SELECT max(revision) FROM instruction newer WHERE newer.node = instruction.node)")
                .map((row, context) -> instruction(row))
                .list());
    }

    /** What a node last said; empty if it never said anything of its settings. */
    public Optional<HeardAcknowledgement> heard(String node) {
        return jdbi.withHandle(handle -> handle.createQuery(HEARD + "WHERE node = :node")
                .bind("node", node)
                .map((row, context) -> heard(row))
                .findOne());
    }

    /** The number of the last thing that any node said; 0 if none ever did. */
    long lastNumber() {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT coalesce(max(number), 0) FROM acknowledgement")
                .mapTo(Long.class)
                .one());
    }

    /** What nodes said after a number and up to another. */
    List<HeardAcknowledgement> heardBetween(long after, long upTo) {
        return jdbi.withHandle(handle -> handle.createQuery(HEARD + "WHERE number > :after AND number <= :upTo")
                .bind("after", after)
                .bind("upTo", upTo)
                .map((row, context) -> heard(row))
                .list());
    }

    /** Writes a revision down. */
    void put(Instruction told) {
        jdbi.useHandle(handle -> handle.createUpdate("INSERT INTO instruction (node, revision, asked_ms, asked_by,"
                        + " period_s, quick_period_s, quick, tare, sent_ms, settled_ms) VALUES (:node, :revision,"
                        + " :asked, :by, :period, :quickPeriod, :quick, :tare, :sent, :settled)")
                .bind("node", told.node())
                .bind("revision", told.revision())
                .bind("asked", told.asked().toEpochMilli())
                .bind("by", told.by())
                .bind("period", told.settings().periodSeconds())
                .bind("quickPeriod", told.settings().quickPeriodSeconds())
                .bind("quick", told.settings().quick().wireName())
                .bind("tare", told.settings().tare())
                .bind("sent", told.sent().map(Instant::toEpochMilli).orElse(null))
                .bind("settled", told.settled().map(Instant::toEpochMilli).orElse(null))
                .execute());
    }

    /** Before it goes out: from now on the node may have heard it. */
    void tried(Instruction told, Instant when) {
        jdbi.useHandle(handle -> handle.createUpdate(
                        "UPDATE instruction SET tried_ms = :when WHERE node = :node AND revision = :revision")
                .bind("when", when.toEpochMilli())
                .bind("node", told.node())
                .bind("revision", told.revision())
                .execute());
    }

    /** A broker has it. */
    void sent(Instruction told, Instant when) {
        setSent(told, when.toEpochMilli());
    }

    /** Lets it go out once more. */
    void resend(Instruction told) {
        setSent(told, null);
    }

    private void setSent(Instruction told, Long millis) {
        jdbi.useHandle(handle -> handle.createUpdate(
                        "UPDATE instruction SET sent_ms = :when WHERE node = :node AND revision = :revision")
                .bind("when", millis)
                .bind("node", told.node())
                .bind("revision", told.revision())
                .execute());
    }

    /**
     * Writes down what a node says, and settles what it was told by it. What is older than what is known, or what the
     * broker hands over once more, changes nothing.
     *
     * @return whether it was news
     */
    public boolean note(String node, Message message, Acknowledgement said) {
        return jdbi.inTransaction(handle -> {
            if (isKnown(handle, node, message)) {
                return false;
            }
            handle.createUpdate("INSERT INTO acknowledgement (node, number, received_ms, from_store, payload)"
                            + " VALUES (:node, (SELECT coalesce(max(number), 0) + 1 FROM acknowledgement), :received,"
                            + " :fromStore, :payload) ON CONFLICT (node) DO UPDATE SET number = excluded.number,"
                            + " received_ms = excluded.received_ms, from_store = excluded.from_store,"
                            + " payload = excluded.payload")
                    .bind("node", node)
                    .bind("received", message.received().toEpochMilli())
                    .bind("fromStore", message.fromStore())
                    .bind("payload", message.payload())
                    .execute();
            settle(handle, node, message.received(), said);
            return true;
        });
    }

    private static boolean isKnown(Handle handle, String node, Message message) {
        return handle.createQuery("SELECT received_ms, payload FROM acknowledgement WHERE node = :node")
                .bind("node", node)
                .map((row, context) -> row.getLong(1) > message.received().toEpochMilli()
                        || message.fromStore() && Arrays.equals(row.getBytes(2), message.payload()))
                .findOne()
                .orElse(false);
    }

    /**
     * A refusal leaves the node's revision as it was, so it speaks of the last one that was on its way. Its word may
     * overtake the broker's confirmation to us, so that what was tried counts and not what was confirmed.
     */
    private static void settle(Handle handle, String node, Instant received, Acknowledgement said) {
        String newest =
                "revision = (SELECT max(revision) FROM instruction WHERE node = :node AND tried_ms IS NOT NULL)";
        if (said.refused().isPresent()) {
            handle.createUpdate("UPDATE instruction SET settled_ms = :received, refused = :refused,"
                            + " sent_ms = coalesce(sent_ms, :received) WHERE node = :node"
                            + " AND settled_ms IS NULL AND revision > :revision AND " + newest)
                    .bind("received", received.toEpochMilli())
                    .bind("refused", said.refused().get())
                    .bind("node", node)
                    .bind("revision", said.revision())
                    .execute();
        } else {
            handle.createUpdate("UPDATE instruction SET settled_ms = :received, refused = NULL,"
                            + " sent_ms = coalesce(sent_ms, :received) WHERE node = :node AND revision = :revision AND"
                            + " (settled_ms IS NULL OR refused IS NOT NULL)")
                    .bind("received", received.toEpochMilli())
                    .bind("node", node)
                    .bind("revision", said.revision())
                    .execute();
        }
    }

    private static Instruction instruction(ResultSet row) throws SQLException {
        return new Instruction(
                row.getString(1),
                row.getLong(2),
                new NodeSettings(
                        row.getLong(5),
                        row.getLong(6),
                        QuickMode.named(row.getString(7)).orElseThrow(),
                        row.getLong(8)),
                Instant.ofEpochMilli(row.getLong(3)),
                row.getString(4),
                time(row, 9),
                time(row, 10),
                Optional.ofNullable(row.getString(11)));
    }

    private static Optional<Instant> time(ResultSet row, int column) throws SQLException {
        long millis = row.getLong(column);
        return row.wasNull() ? Optional.empty() : Optional.of(Instant.ofEpochMilli(millis));
    }

    private static HeardAcknowledgement heard(ResultSet row) throws SQLException {
        try {
            return new HeardAcknowledgement(
                    row.getString(1),
                    Instant.ofEpochMilli(row.getLong(2)),
                    row.getBoolean(3),
                    Acknowledgement.decode(row.getBytes(4)));
        } catch (UnreadableMessage impossible) {
            throw new IllegalStateException("Only what could be decoded is written here.", impossible);
        }
    }
}
