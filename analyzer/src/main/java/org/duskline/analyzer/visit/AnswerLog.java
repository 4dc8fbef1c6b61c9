package org.duskline.analyzer.visit;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Kind;
import org.duskline.collector.store.Store;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/** The keepers' answers, all of them: a later one outweighs an earlier one and does not replace it. */
public final class AnswerLog {
    private static final String FINDING = " WHERE trap = :trap AND kind = :kind AND onset_ms = :onset";

    private final Jdbi jdbi;

    private AnswerLog(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** Opens the log in the store's file, creating its tables if needed. */
    public static AnswerLog open(Store store) {
        VisitTables.bringUpToDate(store);
        return new AnswerLog(store.jdbi());
    }

    /**
     * Writes an answer down.
     *
     * @param token the caller's own mark for this writing, so that sending it again writes it once only; empty for none
     * @return whether it is new
     */
    public boolean record(Answer answer, Optional<String> token) {
        return jdbi.withHandle(handle -> handle.createUpdate("INSERT INTO answer (trap, kind, onset_ms, said, note,"
                                + " at_ms, given_by, token) VALUES (:trap, :kind, :onset, :said, :note, :at,"
                                + " :by, :token) ON CONFLICT (token) DO NOTHING")
                        .bind("trap", answer.trap())
                        .bind("kind", answer.kind().name())
                        .bind("onset", answer.onset().toEpochMilli())
                        .bind("said", answer.said().name())
                        .bind("note", answer.note())
                        .bind("at", answer.at().toEpochMilli())
                        .bind("by", answer.by())
                        .bind("token", token.orElse(null))
                        .execute()
                > 0);
    }

    /** The answer that was written with this mark, if it was. */
    public Optional<Answer> marked(String token) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT * FROM answer WHERE token = :token")
                .bind("token", token)
                .map(AnswerLog::read)
                .findOne());
    }

    /** All answers to a finding, first to last. */
    public List<Answer> to(String trap, Kind kind, Instant onset) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT * FROM answer" + FINDING + " ORDER BY at_ms, entry")
                .bind("trap", trap)
                .bind("kind", kind.name())
                .bind("onset", onset.toEpochMilli())
                .map(AnswerLog::read)
                .list());
    }

    /** What a finding really was, by the latest answer that says so. */
    public Optional<Answer> verdict(String trap, Kind kind, Instant onset) {
        return to(trap, kind, onset).stream()
                .filter(answer -> answer.said().isVerdict())
                .reduce((earlier, later) -> later);
    }

    /** All answers of a stretch of findings' onsets, by onset and time. */
    public List<Answer> between(Instant from, Instant until) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT * FROM answer WHERE onset_ms >= :from"
                        + " AND onset_ms < :until ORDER BY onset_ms, at_ms, entry")
                .bind("from", from.toEpochMilli())
                .bind("until", until.toEpochMilli())
                .map(AnswerLog::read)
                .list());
    }

    private static Answer read(ResultSet row, StatementContext context) throws SQLException {
        return new Answer(
                row.getString("trap"),
                Kind.valueOf(row.getString("kind")),
                Instant.ofEpochMilli(row.getLong("onset_ms")),
                Said.valueOf(row.getString("said")),
                row.getString("note"),
                Instant.ofEpochMilli(row.getLong("at_ms")),
                row.getString("given_by"));
    }
}
