package org.duskline.collector.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import org.duskline.collector.wire.ClockRun;
import org.duskline.collector.wire.Damage;
import org.duskline.collector.wire.Sample;
import org.duskline.collector.wire.Status;
import org.duskline.collector.wire.TimedPack;

/** Writes messages inside one transaction. Handed out by {@link Store#write}; not to be kept beyond it. */
public final class PackWriter {
    private static final int RUNS_KEPT_IN_VIEW = 8;

    private final Connection connection;
    private final SampleWriter samples;
    private final Map<String, PreparedStatement> statements = new HashMap<>();
    private final Map<String, Long> nodeIds = new HashMap<>();
    // Valid for one transaction.
    private final Map<Long, Long> lastHeard = new HashMap<>();
    private long lastPack = -1;

    PackWriter(Connection connection) throws SQLException {
        this.connection = connection;
        this.samples = new SampleWriter(connection);
    }

    private PreparedStatement prepared(String sql) throws SQLException {
        PreparedStatement statement = statements.get(sql);
        if (statement == null) {
            statement = connection.prepareStatement(sql);
            statements.put(sql, statement);
        }
        return statement;
    }

    /** The number of a node, which is made known if it was never heard before. */
    public long heard(String node, long receivedMillis) throws SQLException {
        Long known = nodeIds.get(node);
        if (known == null) {
            PreparedStatement insert =
                    prepared("INSERT INTO node (name, first_heard_ms, last_heard_ms) VALUES (?, ?, ?)"
                            + " ON CONFLICT (name) DO UPDATE SET first_heard_ms = min(first_heard_ms, excluded.first_heard_ms)"
                            + " RETURNING id");
            insert.setString(1, node);
            insert.setLong(2, receivedMillis);
            insert.setLong(3, receivedMillis);
            try (ResultSet row = insert.executeQuery()) {
                row.next();
                known = row.getLong(1);
            }
            nodeIds.put(node, known);
        }
        lastHeard.merge(known, receivedMillis, Math::max);
        return known;
    }

    /** Keeps what a node, or its last will, says of itself, unless something newer is known. */
    public void status(long node, Status status, long receivedMillis) throws SQLException {
        PreparedStatement update =
                prepared("UPDATE node SET status = ?, status_ms = ? WHERE id = ? AND coalesce(status_ms, ?) <= ?");
        update.setString(1, status.name().toLowerCase(Locale.ROOT));
        update.setLong(2, receivedMillis);
        update.setLong(3, node);
        update.setLong(4, receivedMillis);
        update.setLong(5, receivedMillis);
        update.executeUpdate();
    }

    /** When a pack of this content last came from the node, at or before a receipt, Unix ms. */
    public OptionalLong lastReceived(long node, long digest, long receivedMillis) throws SQLException {
        PreparedStatement query =
                prepared("SELECT max(received_ms) FROM pack WHERE node = ? AND digest = ? AND received_ms <= ?");
        query.setLong(1, node);
        query.setLong(2, digest);
        query.setLong(3, receivedMillis);
        try (ResultSet row = query.executeQuery()) {
            row.next();
            long found = row.getLong(1);
            return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(found);
        }
    }

    /** The newest sample times of a node's last packs, Unix ms, latest pack first. */
    public List<Long> lastTimes(long node, int packs) throws SQLException {
        PreparedStatement query = prepared("SELECT last_ms FROM pack WHERE node = ? ORDER BY id DESC LIMIT ?");
        query.setLong(1, node);
        query.setInt(2, packs);
        List<Long> times = new ArrayList<>(packs);
        try (ResultSet row = query.executeQuery()) {
            while (row.next()) {
                times.add(row.getLong(1));
            }
        }
        return times;
    }

    /** The last stretches over which the node's clock was wrong, latest first. */
    public List<ClockRun> clockRuns(long node) throws SQLException {
        PreparedStatement query = prepared("SELECT id, boot, seq, first_s, newest_s, offset_ms FROM clock_run"
                + " WHERE node = ? ORDER BY id DESC LIMIT " + RUNS_KEPT_IN_VIEW);
        query.setLong(1, node);
        List<ClockRun> runs = new ArrayList<>();
        try (ResultSet row = query.executeQuery()) {
            while (row.next()) {
                runs.add(new ClockRun(
                        row.getLong(1),
                        row.getLong(2),
                        row.getLong(3),
                        row.getDouble(4),
                        row.getDouble(5),
                        row.getLong(6)));
            }
        }
        return runs;
    }

    /**
     * Stores a pack's samples, each once. A pack that brings nothing new leaves no trace.
     *
     * @param boot how often the node has started; -1 when not sent
     * @param seq the pack's number; -1 when not sent
     * @param digest the content's digest, by which a second delivery is found
     */
    public Stored pack(long node, long receivedMillis, TimedPack timed, long boot, long seq, long digest)
            throws SQLException {
        long pack = lastPack() + 1;
        long run = timed.run() == null ? 0 : keep(node, timed.run());
        Span span = new Span();
        int moved = 0;
        if (timed.earlierByMillis() > 0) {
            moved = samples.move(node, run, timed.earlierByMillis(), pack, span);
        }
        int added = 0;
        int merged = 0;
        int repeats = 0;
        for (Sample sample : timed.samples()) {
            switch (samples.put(node, pack, sample)) {
                case ADDED -> {
                    added++;
                    span.include(sample.timeMillis());
                }
                case MERGED -> {
                    merged++;
                    span.include(sample.timeMillis());
                }
                case REPEAT -> repeats++;
            }
        }
        if (added + merged + moved > 0) {
            lastPack = pack;
            insertPack(pack, node, receivedMillis, span, added + merged + moved, boot, seq, digest, run);
        }
        return new Stored(added, merged, repeats, moved);
    }

    private long lastPack() throws SQLException {
        if (lastPack < 0) {
            try (ResultSet row =
                    prepared("SELECT coalesce(max(id), 0) FROM pack").executeQuery()) {
                row.next();
                lastPack = row.getLong(1);
            }
        }
        return lastPack;
    }

    private void insertPack(
            long pack,
            long node,
            long receivedMillis,
            Span span,
            int samplesInIt,
            long boot,
            long seq,
            long digest,
            long run)
            throws SQLException {
        PreparedStatement insert = prepared("INSERT INTO pack (id, node, received_ms, first_ms, last_ms, samples, boot,"
                + " seq, digest, clock_run) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
        insert.setLong(1, pack);
        insert.setLong(2, node);
        insert.setLong(3, receivedMillis);
        insert.setLong(4, span.first());
        insert.setLong(5, span.last());
        insert.setInt(6, samplesInIt);
        SampleWriter.setCount(insert, 7, boot);
        SampleWriter.setCount(insert, 8, seq);
        insert.setLong(9, digest);
        SampleWriter.setCount(insert, 10, run == 0 ? -1 : run);
        insert.executeUpdate();
    }

    private long keep(long node, ClockRun run) throws SQLException {
        PreparedStatement insert = prepared("INSERT INTO clock_run (id, node, boot, seq, first_s, newest_s, offset_ms)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO UPDATE SET seq = excluded.seq,"
                + " first_s = excluded.first_s, newest_s = excluded.newest_s, offset_ms = excluded.offset_ms"
                + " RETURNING id");
        SampleWriter.setCount(insert, 1, run.id() == 0 ? -1 : run.id());
        insert.setLong(2, node);
        insert.setLong(3, run.boot());
        insert.setLong(4, run.seq());
        insert.setDouble(5, run.firstSeconds());
        insert.setDouble(6, run.newestSeconds());
        insert.setLong(7, run.offsetMillis());
        try (ResultSet row = insert.executeQuery()) {
            row.next();
            return row.getLong(1);
        }
    }

    /** Keeps a message that could not be decoded. Returns false if the very same one is kept already. */
    public boolean damage(Damage damage) throws SQLException {
        PreparedStatement insert = prepared("INSERT INTO damage (received_ms, topic, payload, reason, detail)"
                + " SELECT ?1, ?2, ?3, ?4, ?5 WHERE NOT EXISTS"
                + " (SELECT 1 FROM damage WHERE received_ms = ?1 AND topic = ?2 AND payload = ?3)");
        insert.setLong(1, damage.message().received().toEpochMilli());
        insert.setString(2, damage.message().topic());
        insert.setBytes(3, damage.message().payload());
        insert.setString(4, damage.reason().name());
        insert.setString(5, damage.detail());
        return insert.executeUpdate() > 0;
    }

    /** Writes down, once a transaction, when each node was last heard. */
    void finish() throws SQLException {
        PreparedStatement update = prepared("UPDATE node SET last_heard_ms = max(last_heard_ms, ?) WHERE id = ?");
        for (Map.Entry<Long, Long> heard : lastHeard.entrySet()) {
            update.setLong(1, heard.getValue());
            update.setLong(2, heard.getKey());
            update.executeUpdate();
        }
        lastHeard.clear();
        lastPack = -1;
    }
}
