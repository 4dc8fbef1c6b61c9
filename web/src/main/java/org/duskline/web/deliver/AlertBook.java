package org.duskline.web.deliver;

import java.time.Instant;
import java.util.List;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The alerts on disk: each stage of a finding once, written in the finding's own transaction, and kept after it was told
 * as it was told. Safe for many threads.
 */
public final class AlertBook implements FindingLog.Along {
    private final Jdbi jdbi;

    /** Opens the book in a store and brings its table up to date. */
    public AlertBook(Store store) {
        store.migrate("deliver_history", "classpath:org/duskline/web/deliver");
        this.jdbi = store.jdbi();
    }

    /**
     * An alert that waits for the broker's confirmation.
     *
     * @param id its number, in the order of writing
     * @param trap the trap it is about
     * @param body the finding as it stood, as JSON
     */
    record Waiting(long id, String trap, String body) {}

    @Override
    public void write(Handle handle, List<Finding> changes) {
        for (Finding finding : changes) {
            handle.createUpdate("INSERT OR IGNORE INTO told (trap, kind, onset_ms, stage, body)"
                            + " VALUES (:trap, :kind, :onset, :stage, :body)")
                    .bind("trap", finding.trap())
                    .bind("kind", finding.kind().wireName())
                    .bind("onset", finding.onset().toEpochMilli())
                    .bind("stage", finding.stage().wireName())
                    .bind("body", FindingJson.text(finding))
                    .execute();
        }
    }

    /** What was not confirmed yet, oldest first. */
    List<Waiting> waiting(int limit) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "SELECT id, trap, body FROM told WHERE confirmed_ms IS NULL ORDER BY id LIMIT :limit")
                .bind("limit", limit)
                .map((row, context) -> new Waiting(row.getLong(1), row.getString(2), row.getString(3)))
                .list());
    }

    void confirmed(long id, Instant at) {
        jdbi.useHandle(handle -> handle.createUpdate("UPDATE told SET confirmed_ms = :at WHERE id = :id")
                .bind("at", at.toEpochMilli())
                .bind("id", id)
                .execute());
    }
}
