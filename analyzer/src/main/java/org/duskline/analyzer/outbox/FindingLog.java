package org.duskline.analyzer.outbox;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.store.Store;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.result.ResultIterable;

/** The findings on disk, with the cursor up to which the stored packs have been analysed. Safe for many threads. */
public final class FindingLog {
    private static final String COLUMNS =
            "SELECT trap, node, kind, onset_ms, raised_ms, stage, changed_ms, probability, summary, details, thresholds FROM finding ";

    private final Jdbi jdbi;

    /** Opens the log in a store and brings its tables up to date. */
    public FindingLog(Store store) {
        store.migrate("analyzer_history", "classpath:org/duskline/analyzer/outbox");
        this.jdbi = store.jdbi();
    }

    /** Something to be written together with the findings, such as the alerts they cause. */
    @FunctionalInterface
    public interface Along {
        void write(Handle handle, List<Finding> changes);
    }

    /**
     * Keeps what changed and how far the analysis has come, in one transaction.
     *
     * @param changes new findings and findings whose stage changed, in order
     * @param cursor the last pack analysed
     * @param along written in the same transaction
     */
    public void keep(List<Finding> changes, long cursor, Along along) {
        jdbi.useTransaction(handle -> {
            for (Finding finding : changes) {
                put(handle, finding);
            }
            along.write(handle, changes);
            handle.createUpdate("INSERT INTO analysis_cursor (one, pack) VALUES (1, :pack)"
                            + " ON CONFLICT (one) DO UPDATE SET pack = excluded.pack")
                    .bind("pack", cursor)
                    .execute();
        });
    }

    private static void put(Handle handle, Finding finding) {
        long id = handle.createQuery("INSERT INTO finding (trap, node, kind, onset_ms, raised_ms, stage, changed_ms,"
                        + " probability, summary, details, thresholds) VALUES (:trap, :node, :kind, :onset, :raised,"
                        + " :stage, :changed, :probability, :summary, :details, :thresholds)"
                        + " ON CONFLICT (trap, kind, onset_ms) DO UPDATE SET stage = excluded.stage, changed_ms ="
                        + " excluded.changed_ms, probability = excluded.probability, summary = excluded.summary, details"
                        + " = excluded.details RETURNING id")
                .bind("trap", finding.trap())
                .bind("node", finding.node())
                .bind("kind", finding.kind().name())
                .bind("onset", finding.onset().toEpochMilli())
                .bind("raised", finding.raised().toEpochMilli())
                .bind("stage", finding.stage().name())
                .bind("changed", finding.changed().toEpochMilli())
                .bind("probability", finding.probability())
                .bind("summary", finding.summary())
                .bind("details", Details.write(finding))
                .bind("thresholds", finding.thresholds())
                .mapTo(Long.class)
                .one();
        handle.createUpdate("INSERT INTO finding_step (finding, stage, changed_ms, summary) VALUES (:finding, :stage,"
                        + " :changed, :summary)")
                .bind("finding", id)
                .bind("stage", finding.stage().name())
                .bind("changed", finding.changed().toEpochMilli())
                .bind("summary", finding.summary())
                .execute();
    }

    /** The last pack that was analysed; 0 if none. */
    public long cursor() {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT pack FROM analysis_cursor")
                .mapTo(Long.class)
                .findOne()
                .orElse(0L));
    }

    /** All findings, in the order in which they were raised. */
    public List<Finding> all() {
        return jdbi.withHandle(handle ->
                findings(handle.createQuery(COLUMNS + "ORDER BY raised_ms, id")).list());
    }

    /** The findings of a trap whose onset lies in a stretch of time, by onset. */
    public List<Finding> ofTrap(String trap, Instant from, Instant until) {
        return jdbi.withHandle(handle -> findings(handle.createQuery(COLUMNS
                                + "WHERE trap = :trap AND onset_ms >= :from AND onset_ms < :until ORDER BY onset_ms")
                        .bind("trap", trap)
                        .bind("from", millis(from))
                        .bind("until", millis(until)))
                .list());
    }

    /** The newest findings of the whole line, newest first. */
    public List<Finding> latest(int limit) {
        return jdbi.withHandle(
                handle -> findings(handle.createQuery(COLUMNS + "ORDER BY raised_ms DESC, id DESC LIMIT :limit")
                                .bind("limit", limit))
                        .list());
    }

    /** The findings raised or changed from a moment on, in the order of their last change. */
    public List<Finding> changedSince(Instant since) {
        return jdbi.withHandle(
                handle -> findings(handle.createQuery(COLUMNS + "WHERE changed_ms >= :since ORDER BY changed_ms, id")
                                .bind("since", millis(since)))
                        .list());
    }

    /** The findings that still stand, by onset. */
    public List<Finding> standing() {
        return jdbi.withHandle(handle -> findings(
                        handle.createQuery(COLUMNS + "WHERE stage NOT IN ('ENDED', 'WITHDRAWN') ORDER BY onset_ms"))
                .list());
    }

    /** One finding by its identity. */
    public Optional<Finding> find(String trap, Kind kind, Instant onset) {
        return jdbi.withHandle(handle -> findings(
                        handle.createQuery(COLUMNS + "WHERE trap = :trap AND kind = :kind AND onset_ms = :onset")
                                .bind("trap", trap)
                                .bind("kind", kind.name())
                                .bind("onset", onset.toEpochMilli()))
                .findOne());
    }

    /**
     * A stage that a finding went through.
     *
     * @param stage the stage
     * @param at when, by the clock of receipt
     * @param summary what was said then
     */
    public record Step(Stage stage, Instant at, String summary) {}

    /** The stages of a finding, in order. */
    public List<Step> steps(String trap, Kind kind, Instant onset) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT step.stage, step.changed_ms, step.summary FROM"
                        + " finding_step step JOIN finding ON finding.id = step.finding WHERE trap = :trap AND kind ="
                        + " :kind AND onset_ms = :onset ORDER BY step.id")
                .bind("trap", trap)
                .bind("kind", kind.name())
                .bind("onset", onset.toEpochMilli())
                .map((row, context) -> new Step(
                        Stage.valueOf(row.getString(1)), Instant.ofEpochMilli(row.getLong(2)), row.getString(3)))
                .list());
    }

    private static long millis(Instant time) {
        if (time.equals(Instant.MIN)) {
            return Long.MIN_VALUE;
        }
        return time.equals(Instant.MAX) ? Long.MAX_VALUE : time.toEpochMilli();
    }

    private static ResultIterable<Finding> findings(org.jdbi.v3.core.statement.Query query) {
        return query.map((row, context) -> {
            Details details = Details.read(row.getString(10));
            return new Finding(
                    row.getString(1),
                    row.getString(2),
                    Kind.valueOf(row.getString(3)),
                    Instant.ofEpochMilli(row.getLong(4)),
                    Instant.ofEpochMilli(row.getLong(5)),
                    Stage.valueOf(row.getString(6)),
                    Instant.ofEpochMilli(row.getLong(7)),
                    row.getDouble(8),
                    row.getString(9),
                    details.evidence(),
                    details.rivals(),
                    details.size(),
                    row.getInt(11));
        });
    }
}
