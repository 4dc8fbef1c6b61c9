package org.duskline.collector.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.function.Consumer;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.wire.Sample;

/**
 * The samples as readers see them: raw counts already weighed by the calibration of their day. Safe for use by many
 * threads; a read sees the state of the last commit before it began.
 */
public final class SampleLog {
    private static final int IDLE_CONNECTIONS = 4;

    private final Database database;
    private final ConcurrentLinkedDeque<Connection> idle = new ConcurrentLinkedDeque<>();

    SampleLog(Database database) {
        this.database = database;
    }

    private interface Reading<T> {
        T on(Connection connection) throws SQLException;
    }

    /**
     * Hands over a node's samples in time order; two that tell the same instant otherwise come one after the other.
     *
     * @param from first instant, inclusive; {@link Instant#MIN} for all
     * @param until first instant left out; {@link Instant#MAX} for all
     */
    public void read(String node, Instant from, Instant until, Consumer<Sample> reader) {
        reading("Reading the samples of " + node, connection -> {
            Scale scale = new Scale(calibrations(connection, node));
            try (PreparedStatement query = connection.prepareStatement("SELECT " + SampleRows.COLUMNS
                    + " FROM sample WHERE node = (SELECT id FROM node WHERE name = ?) AND time_ms >= ? AND time_ms < ?"
                    + " ORDER BY time_ms, twin")) {
                query.setString(1, node);
                query.setLong(2, Times.millis(from));
                query.setLong(3, Times.millis(until));
                try (ResultSet row = query.executeQuery()) {
                    while (row.next()) {
                        reader.accept(scale.weighed(SampleRows.read(row)));
                    }
                }
            }
            return null;
        });
    }

    /**
     * What came after a pack, in the order of storing. An arrival holds what the message brought; beside that the earlier
     * samples that it completed, or whose times it put right.
     *
     * @param pack the last pack that the reader knows; 0 for all
     * @param limit how many arrivals at most
     */
    public List<Arrival> arrivalsAfter(long pack, int limit) {
        return reading("Reading what has arrived", connection -> {
            try (PreparedStatement query = connection.prepareStatement("SELECT " + SampleRows.COLUMNS
                    + ", fresh.id, fresh.received_ms, node.name FROM (SELECT * FROM pack WHERE id > ? ORDER BY id LIMIT ?)"
                    + " AS fresh CROSS JOIN node ON node.id = fresh.node CROSS JOIN sample ON sample.node = fresh.node"
                    + " AND time_ms BETWEEN fresh.first_ms AND fresh.last_ms AND sample.pack = fresh.id"
                    + " ORDER BY fresh.id, time_ms, twin")) {
                query.setLong(1, pack);
                query.setInt(2, limit);
                try (ResultSet row = query.executeQuery()) {
                    return arrivals(connection, row);
                }
            }
        });
    }

    /**
     * The packs that came in during a stretch of time; packs of other times may lie between them.
     *
     * @param first the number of the first; 0 where there is none
     * @param last the number of the last; 0 where there is none
     */
    public record PackRange(long first, long last) {
        /** How many there are at most. */
        public long size() {
            return first == 0 ? 0 : last - first + 1;
        }
    }

    /**
     * Finds the packs that came in from an instant on until before another.
     *
     * @param from first receipt, inclusive
     * @param until first receipt left out
     */
    public PackRange received(Instant from, Instant until) {
        return reading("Looking for what had arrived", connection -> {
            try (PreparedStatement query = connection.prepareStatement(
                    "SELECT coalesce(min(id), 0), coalesce(max(id), 0) FROM pack WHERE received_ms >= ? AND received_ms < ?")) {
                query.setLong(1, Times.millis(from));
                query.setLong(2, Times.millis(until));
                try (ResultSet row = query.executeQuery()) {
                    row.next();
                    return new PackRange(row.getLong(1), row.getLong(2));
                }
            }
        });
    }

    /** The newest pack's number; 0 if nothing has arrived. */
    public long lastPack() {
        return reading("Reading what has arrived", connection -> {
            try (PreparedStatement query = connection.prepareStatement("SELECT coalesce(max(id), 0) FROM pack");
                    ResultSet row = query.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        });
    }

    private static List<Arrival> arrivals(Connection connection, ResultSet row) throws SQLException {
        Scales scales = new Scales(connection);
        List<Arrival> arrivals = new ArrayList<>();
        List<Sample> samples = new ArrayList<>();
        long current = 0;
        String node = "";
        long received = 0;
        while (row.next()) {
            long id = row.getLong(15);
            if (id != current) {
                add(arrivals, current, node, received, samples);
                current = id;
                received = row.getLong(16);
                node = row.getString(17);
            }
            samples.add(scales.of(node).weighed(SampleRows.read(row)));
        }
        add(arrivals, current, node, received, samples);
        return arrivals;
    }

    private static void add(List<Arrival> arrivals, long pack, String node, long received, List<Sample> samples) {
        if (!samples.isEmpty()) {
            arrivals.add(new Arrival(pack, node, Instant.ofEpochMilli(received), samples));
            samples.clear();
        }
    }

    static List<Calibration> calibrations(Connection connection, String node) throws SQLException {
        List<Calibration> calibrations = new ArrayList<>();
        try (PreparedStatement query = connection.prepareStatement(
                "SELECT from_ms, offset_counts, counts_per_kg FROM calibration WHERE node = ? ORDER BY from_ms")) {
            query.setString(1, node);
            try (ResultSet row = query.executeQuery()) {
                while (row.next()) {
                    calibrations.add(
                            new Calibration(node, Times.instant(row.getLong(1)), row.getDouble(2), row.getDouble(3)));
                }
            }
        }
        return calibrations;
    }

    private <T> T reading(String work, Reading<T> reading) {
        Connection connection = idle.poll();
        boolean sound = false;
        try {
            if (connection == null) {
                connection = database.source().getConnection();
            }
            T result = reading.on(connection);
            sound = true;
            return result;
        } catch (SQLException failed) {
            throw database.failed(work, failed);
        } finally {
            giveBack(connection, sound);
        }
    }

    private void giveBack(Connection connection, boolean sound) {
        if (connection == null) {
            return;
        }
        if (sound && idle.size() < IDLE_CONNECTIONS) {
            idle.push(connection);
        } else {
            close(connection);
        }
    }

    private void close(Connection connection) {
        try {
            connection.close();
        } catch (SQLException failed) {
            throw database.failed("Closing", failed);
        }
    }

    void close() {
        for (Connection connection = idle.poll(); connection != null; connection = idle.poll()) {
            close(connection);
        }
    }
}
