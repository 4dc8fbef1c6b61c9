package org.duskline.collector.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.collector.wire.Status;
import org.jdbi.v3.core.Jdbi;

/** Every node that was ever heard, on the line or not. */
public final class NodeLog {
    private static final String SELECT = "SELECT name, first_heard_ms, last_heard_ms, status, status_ms FROM node ";

    private final Jdbi jdbi;

    NodeLog(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** All, by name. */
    public List<HeardNode> all() {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "ORDER BY name")
                .map((row, context) -> node(row))
                .list());
    }

    /** One by its name; empty if it was never heard. */
    public Optional<HeardNode> find(String name) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "WHERE name = :name")
                .bind("name", name)
                .map((row, context) -> node(row))
                .findOne());
    }

    /** A node's last messages that brought samples, latest first. */
    public List<HeardPack> packs(String node, int limit) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT received_ms, first_ms, last_ms, samples FROM pack"
                        + " WHERE node = (SELECT id FROM node WHERE name = :name) ORDER BY id DESC LIMIT :limit")
                .bind("name", node)
                .bind("limit", limit)
                .map((row, context) -> new HeardPack(
                        Instant.ofEpochMilli(row.getLong(1)),
                        Instant.ofEpochMilli(row.getLong(2)),
                        Instant.ofEpochMilli(row.getLong(3)),
                        row.getInt(4)))
                .list());
    }

    private static HeardNode node(ResultSet row) throws SQLException {
        String status = row.getString(4);
        return new HeardNode(
                row.getString(1),
                Instant.ofEpochMilli(row.getLong(2)),
                Instant.ofEpochMilli(row.getLong(3)),
                Optional.ofNullable(status).map(text -> Status.valueOf(text.toUpperCase(Locale.ROOT))),
                status == null ? Optional.empty() : Optional.of(Instant.ofEpochMilli(row.getLong(5))));
    }
}
