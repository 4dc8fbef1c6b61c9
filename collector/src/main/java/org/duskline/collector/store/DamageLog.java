package org.duskline.collector.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.duskline.collector.wire.Damage;
import org.duskline.collector.wire.DamageReason;
import org.duskline.collector.wire.Message;
import org.jdbi.v3.core.Jdbi;

/** What could not be decoded, as it came. */
public final class DamageLog {
    private static final String UNDER_ITS_NAME = "instr(topic, :name) > 0";

    private final Jdbi jdbi;

    DamageLog(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** The last ones, latest first. */
    public List<KeptDamage> latest(int limit) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT id, received_ms, topic, payload, reason, detail"
                        + " FROM damage ORDER BY received_ms DESC, id DESC LIMIT :limit")
                .bind("limit", limit)
                .map((row, context) -> damage(row))
                .list());
    }

    /** The last ones that came under a node's name, latest first. */
    public List<KeptDamage> ofNode(String node, int limit) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT id, received_ms, topic, payload, reason, detail"
                        + " FROM damage WHERE " + UNDER_ITS_NAME + " ORDER BY received_ms DESC, id DESC LIMIT :limit")
                .bind("name", "/" + node + "/")
                .bind("limit", limit)
                .map((row, context) -> damage(row))
                .list());
    }

    /** How many ever came under a node's name. */
    public long countOfNode(String node) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT count(*) FROM damage WHERE " + UNDER_ITS_NAME)
                .bind("name", "/" + node + "/")
                .mapTo(Long.class)
                .one());
    }

    /** How many there are for each reason that occurs. */
    public Map<DamageReason, Long> byReason() {
        Map<DamageReason, Long> counts = new EnumMap<>(DamageReason.class);
        jdbi.useHandle(handle -> handle.createQuery("SELECT reason, count(*) FROM damage GROUP BY reason")
                .map((row, context) -> Map.entry(DamageReason.valueOf(row.getString(1)), row.getLong(2)))
                .forEach(entry -> counts.put(entry.getKey(), entry.getValue())));
        return counts;
    }

    private static KeptDamage damage(ResultSet row) throws SQLException {
        Message message = new Message(Instant.ofEpochMilli(row.getLong(2)), row.getString(3), row.getBytes(4));
        return new KeptDamage(
                row.getLong(1), new Damage(message, DamageReason.valueOf(row.getString(5)), row.getString(6)));
    }
}
