package org.duskline.analyzer.visit;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.collector.store.Store;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/** The keepers' visits, with every correction. Safe for use by many threads. */
public final class VisitLog {
    private static final String STANDING =
            "SELECT * FROM visit_edition v WHERE edition = (SELECT MAX(edition) FROM visit_edition w"
                    + " WHERE w.visit = v.visit) AND struck = 0 ";

    private final Jdbi jdbi;

    private VisitLog(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** Opens the log in the store's file, creating its tables if needed. */
    public static VisitLog open(Store store) {
        VisitTables.bringUpToDate(store);
        return new VisitLog(store.jdbi());
    }

    /**
     * Writes a visit down.
     *
     * @param written now
     * @param token the caller's own mark for this writing, so that sending it again after a lost connection writes it
     *     once only; empty for none
     * @return the visit's number
     */
    public long record(Visit visit, Instant written, Optional<String> token) {
        return jdbi.inTransaction(handle -> {
            Optional<Long> sentBefore = token.flatMap(mark -> numberOf(handle, mark));
            if (sentBefore.isPresent()) {
                return sentBefore.get();
            }
            long id = handle.createQuery("SELECT COALESCE(MAX(visit), 0) + 1 FROM visit_edition")
                    .mapTo(Long.class)
                    .one();
            write(handle, new KeptVisit(0, id, 1, visit, written, visit.by(), false), token);
            return id;
        });
    }

    /** The number of the visit that was written down under a mark, if it was. */
    public Optional<Long> marked(String token) {
        return jdbi.withHandle(handle -> numberOf(handle, token));
    }

    /** Corrects a visit. What it said before stays in its history. */
    public void correct(long id, Visit visit, Instant written, String by) {
        jdbi.useTransaction(handle -> {
            KeptVisit latest = latest(handle, id);
            write(handle, new KeptVisit(0, id, latest.edition() + 1, visit, written, by, false), Optional.empty());
        });
    }

    /** Says that a visit never was. It stays in the log and can be corrected back. */
    public void strike(long id, Instant written, String by) {
        jdbi.useTransaction(handle -> {
            KeptVisit latest = latest(handle, id);
            write(
                    handle,
                    new KeptVisit(0, id, latest.edition() + 1, latest.visit(), written, by, true),
                    Optional.empty());
        });
    }

    /** The visits at a trap that stand, by time. */
    public List<KeptVisit> of(String trap) {
        return jdbi.withHandle(handle -> handle.createQuery(STANDING + "AND trap = :trap ORDER BY at_ms, entry")
                .bind("trap", trap)
                .map(VisitLog::read)
                .list());
    }

    /** All visits that stand, by time. */
    public List<KeptVisit> all() {
        return jdbi.withHandle(handle -> handle.createQuery(STANDING + "ORDER BY at_ms, entry")
                .map(VisitLog::read)
                .list());
    }

    /** Every edition of one visit, first to last. */
    public List<KeptVisit> history(long id) {
        return jdbi.withHandle(
                handle -> handle.createQuery("SELECT * FROM visit_edition WHERE visit = :id ORDER BY edition")
                        .bind("id", id)
                        .map(VisitLog::read)
                        .list());
    }

    /** Every edition written after an entry, in order of writing: which traps' past must be read again. */
    public List<KeptVisit> writtenAfter(long entry) {
        return jdbi.withHandle(
                handle -> handle.createQuery("SELECT * FROM visit_edition WHERE entry > :entry ORDER BY entry")
                        .bind("entry", entry)
                        .map(VisitLog::read)
                        .list());
    }

    private static Optional<Long> numberOf(Handle handle, String token) {
        return handle.createQuery("SELECT visit FROM visit_edition WHERE token = :token")
                .bind("token", token)
                .mapTo(Long.class)
                .findOne();
    }

    private static KeptVisit latest(Handle handle, long id) {
        return handle.createQuery("SELECT * FROM visit_edition WHERE visit = :id ORDER BY edition DESC LIMIT 1")
                .bind("id", id)
                .map(VisitLog::read)
                .findOne()
                .orElseThrow(() -> new IllegalArgumentException(
                        "There is no visit number " + id + ". Look it up in the trap's list of visits."));
    }

    private static void write(Handle handle, KeptVisit kept, Optional<String> token) {
        Visit visit = kept.visit();
        handle.createUpdate("INSERT INTO visit_edition (visit, edition, trap, kind, at_ms, made_by, mass_kg, where_to,"
                        + " note, written_ms, written_by, struck, token) VALUES (:visit, :edition, :trap, :kind, :at,"
                        + " :by, :mass, :whereTo, :note, :written, :writtenBy, :struck, :token)")
                .bind("visit", kept.id())
                .bind("edition", kept.edition())
                .bind("trap", visit.trap())
                .bind("kind", visit.kind().name())
                .bind("at", visit.at().toEpochMilli())
                .bind("by", visit.by())
                .bind("mass", Double.isNaN(visit.massKg()) ? null : visit.massKg())
                .bind("whereTo", visit.whereTo().orElse(null))
                .bind("note", visit.note())
                .bind("written", kept.written().toEpochMilli())
                .bind("writtenBy", kept.writtenBy())
                .bind("struck", kept.struck())
                .bind("token", token.orElse(null))
                .execute();
    }

    private static KeptVisit read(ResultSet row, StatementContext context) throws SQLException {
        double mass = row.getDouble("mass_kg");
        Visit visit = new Visit(
                row.getString("trap"),
                VisitKind.valueOf(row.getString("kind")),
                Instant.ofEpochMilli(row.getLong("at_ms")),
                row.getString("made_by"),
                mass == 0 ? Double.NaN : mass,
                Optional.ofNullable(row.getString("where_to")),
                row.getString("note"));
        return new KeptVisit(
                row.getLong("entry"),
                row.getLong("visit"),
                row.getInt("edition"),
                visit,
                Instant.ofEpochMilli(row.getLong("written_ms")),
                row.getString("written_by"),
                row.getBoolean("struck"));
    }
}
