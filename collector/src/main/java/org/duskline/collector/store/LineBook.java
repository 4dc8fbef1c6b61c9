package org.duskline.collector.store;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.collector.trap.Calibration;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.LaneBlock;
import org.duskline.collector.trap.Trap;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The keeper's line as it was and is. Fittings and calibrations are dated and may be entered later, with effect back to
 * their day.
 */
public final class LineBook {
    private static final String FITTINGS = "SELECT node, trap, fitted, from_ms, until_ms FROM fitting ";

    private final Jdbi jdbi;

    LineBook(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** All traps, by name. */
    public List<Trap> traps() {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "SELECT name, latitude, longitude, zone FROM trap ORDER BY name")
                .map((row, context) ->
                        new Trap(row.getString(1), row.getDouble(2), row.getDouble(3), ZoneId.of(row.getString(4))))
                .list());
    }

    /** One trap by its name. */
    public Optional<Trap> trap(String name) {
        return traps().stream().filter(trap -> trap.name().equals(name)).findFirst();
    }

    /** Enters a trap, or corrects the one of that name. */
    public void put(Trap trap) {
        jdbi.useHandle(handle -> put(handle, trap));
    }

    private static void put(Handle handle, Trap trap) {
        handle.createUpdate("INSERT INTO trap (name, latitude, longitude, zone) VALUES (:name, :latitude, :longitude,"
                        + " :zone) ON CONFLICT (name) DO UPDATE SET latitude = excluded.latitude,"
                        + " longitude = excluded.longitude, zone = excluded.zone")
                .bind("name", trap.name())
                .bind("latitude", trap.latitude())
                .bind("longitude", trap.longitude())
                .bind("zone", trap.zone().getId())
                .execute();
    }

    /** All fittings, by node and day. */
    public List<Fitting> fittings() {
        return fittings("ORDER BY node, from_ms", "");
    }

    /** What hung in a trap, by day. */
    public List<Fitting> fittingsIn(String trap) {
        return fittings("WHERE trap = :name ORDER BY from_ms, node", trap);
    }

    /** Where a node hung, by day. */
    public List<Fitting> fittingsOf(String node) {
        return fittings("WHERE node = :name ORDER BY from_ms", node);
    }

    private List<Fitting> fittings(String which, String name) {
        return jdbi.withHandle(handle -> {
            var query = handle.createQuery(FITTINGS + which);
            if (!name.isEmpty()) {
                query.bind("name", name);
            }
            return query.map((row, context) -> new Fitting(
                            row.getString(1),
                            row.getString(2),
                            Fitted.valueOf(row.getString(3).toUpperCase(Locale.ROOT)),
                            Times.instant(row.getLong(4)),
                            Times.instant(row.getLong(5))))
                    .list();
        });
    }

    /**
     * Enters a fitting. The node hangs in one trap at a time, so its other fittings give way: one that the new one cuts
     * into ends or begins at its edge, one that it covers is dropped, one that goes on around it stays on both sides.
     */
    public void put(Fitting fitting) {
        jdbi.useTransaction(handle -> put(handle, fitting));
    }

    /** Enters a whole line, all of it or nothing. */
    public void put(List<Trap> traps, List<Fitting> fittings) {
        jdbi.useTransaction(handle -> {
            traps.forEach(trap -> put(handle, trap));
            fittings.forEach(fitting -> put(handle, fitting));
        });
    }

    private static void put(Handle handle, Fitting fitting) {
        long from = Times.millis(fitting.from());
        long until = Times.millis(fitting.until());
        // What goes on behind the new one.
        handle.createUpdate("INSERT INTO fitting (node, from_ms, until_ms, trap, fitted)"
                        + " SELECT node, :until, until_ms, trap, fitted FROM fitting"
                        + " WHERE node = :node AND from_ms < :until AND until_ms > :until")
                .bind("node", fitting.node())
                .bind("until", until)
                .execute();
        handle.createUpdate("DELETE FROM fitting WHERE node = :node AND from_ms >= :from AND from_ms < :until")
                .bind("node", fitting.node())
                .bind("from", from)
                .bind("until", until)
                .execute();
        handle.createUpdate(
                        "UPDATE fitting SET until_ms = :from WHERE node = :node AND from_ms < :from AND until_ms > :from")
                .bind("node", fitting.node())
                .bind("from", from)
                .execute();
        handle.createUpdate("INSERT INTO fitting (node, from_ms, until_ms, trap, fitted)"
                        + " VALUES (:node, :from, :until, :trap, :fitted)")
                .bind("node", fitting.node())
                .bind("from", from)
                .bind("until", until)
                .bind("trap", fitting.trap())
                .bind("fitted", fitting.fitted().name().toLowerCase(Locale.ROOT))
                .execute();
    }

    /** Takes back a fitting that was entered by mistake. */
    public void remove(Fitting fitting) {
        jdbi.useHandle(handle -> handle.createUpdate("DELETE FROM fitting WHERE node = :node AND from_ms = :from")
                .bind("node", fitting.node())
                .bind("from", Times.millis(fitting.from()))
                .execute());
    }

    /** A node's calibrations, by day. */
    public List<Calibration> calibrations(String node) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT from_ms, offset_counts, counts_per_kg"
                        + " FROM calibration WHERE node = :node ORDER BY from_ms")
                .bind("node", node)
                .map((row, context) ->
                        new Calibration(node, Times.instant(row.getLong(1)), row.getDouble(2), row.getDouble(3)))
                .list());
    }

    /** Enters a calibration, or corrects the one of that node and instant. */
    public void put(Calibration calibration) {
        jdbi.useHandle(
                handle -> handle.createUpdate("INSERT INTO calibration (node, from_ms, offset_counts, counts_per_kg)"
                                + " VALUES (:node, :from, :offset, :perKg) ON CONFLICT (node, from_ms) DO UPDATE SET"
                                + " offset_counts = excluded.offset_counts, counts_per_kg = excluded.counts_per_kg")
                        .bind("node", calibration.node())
                        .bind("from", Times.millis(calibration.from()))
                        .bind("offset", calibration.offsetCounts())
                        .bind("perKg", calibration.countsPerKg())
                        .execute());
    }

    /** The fitting that covers an instant, for a node. */
    public Optional<Fitting> fittingOf(String node, Instant time) {
        return fittingsOf(node).stream().filter(fitting -> fitting.covers(time)).findFirst();
    }

    /** What a node's counter is made of, by day; empty where nobody has said. */
    public List<LaneBlock> laneBlocks(String node) {
        return laneBlocks(node, "");
    }

    private List<LaneBlock> laneBlocks(String node, String which) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT from_ms, lanes, dead_time_ms FROM lane_block"
                        + " WHERE node = :node " + which + " ORDER BY from_ms")
                .bind("node", node)
                .map((row, context) -> new LaneBlock(
                        node, Times.instant(row.getLong(1)), row.getInt(2), Duration.ofMillis(row.getLong(3))))
                .list());
    }

    /** What a node's counter was made of at an instant; empty where nobody has said. */
    public Optional<LaneBlock> laneBlock(String node, Instant time) {
        return laneBlocks(node).stream()
                .filter(block -> !block.from().isAfter(time))
                .reduce((earlier, later) -> later);
    }

    /** Enters what a node's counter is made of, or corrects it; what the node itself had said is dropped. */
    public void put(LaneBlock block) {
        jdbi.useTransaction(handle -> {
            handle.createUpdate("DELETE FROM lane_block WHERE node = :node AND said_by = 'node'")
                    .bind("node", block.node())
                    .execute();
            put(handle, block, "keeper");
        });
    }

    /** The last word of the keeper about a node's counter; empty where the keeper has not said. */
    public Optional<LaneBlock> keptLaneBlock(String node) {
        return laneBlocks(node, "AND said_by = 'keeper'").stream().reduce((earlier, later) -> later);
    }

    /**
     * Takes over how many lanes a node says it has, with effect back if it is the first time; from this moment on if it
     * had others before. The keeper's word goes before the node's.
     */
    public void nodeSays(String node, long lanes, Instant when) {
        List<LaneBlock> known = laneBlocks(node);
        boolean news = known.isEmpty() || known.get(known.size() - 1).lanes() != lanes;
        boolean possible = lanes >= 1 && lanes <= LaneBlock.MOST_LANES;
        if (news && possible && keptLaneBlock(node).isEmpty()) {
            Instant from = known.isEmpty() ? Instant.MIN : when;
            LaneBlock block = new LaneBlock(node, from, (int) lanes, LaneBlock.USUAL_DEAD_TIME);
            jdbi.useHandle(handle -> put(handle, block, "node"));
        }
    }

    private static void put(Handle handle, LaneBlock block, String by) {
        handle.createUpdate("INSERT INTO lane_block (node, from_ms, lanes, dead_time_ms, said_by) VALUES (:node, :from,"
                        + " :lanes, :deadTime, :by) ON CONFLICT (node, from_ms) DO UPDATE SET lanes = excluded.lanes,"
                        + " dead_time_ms = excluded.dead_time_ms, said_by = excluded.said_by")
                .bind("node", block.node())
                .bind("from", Times.millis(block.from()))
                .bind("lanes", block.lanes())
                .bind("deadTime", block.deadTime().toMillis())
                .bind("by", by)
                .execute();
    }
}
