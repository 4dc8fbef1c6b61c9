package org.duskline.web.deliver;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** When the program was last alive, so that the next start knows how long nobody was watching. */
public final class Pulse {
    /** A restart shorter than this is no news. */
    static final Duration WORTH_TELLING = Duration.ofMinutes(10);

    /**
     * A time in which the program did not run.
     *
     * @param from its last sign of life
     * @param until when it was back
     * @param packs how many messages of nodes were stored when it was back
     */
    public record Gap(Instant from, Instant until, long packs) {}

    private final Jdbi jdbi;

    Pulse(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /**
     * The time since the last beat, if it is long enough to be told. It is kept until it is told, and grows if the program
     * stops for long once more before that.
     *
     * @param packs how many messages of nodes are stored
     */
    Optional<Gap> gap(Instant now, long packs) {
        return jdbi.inTransaction(handle -> {
            lastBeat(handle)
                    .filter(last -> !last.plus(WORTH_TELLING).isAfter(now))
                    .ifPresent(last -> keep(handle, new Gap(last, now, packs)));
            return untold(handle);
        });
    }

    private static Optional<Instant> lastBeat(Handle handle) {
        return handle.createQuery("SELECT at_ms FROM pulse")
                .mapTo(Long.class)
                .findOne()
                .map(Instant::ofEpochMilli);
    }

    private static void keep(Handle handle, Gap gap) {
        handle.createUpdate("INSERT INTO untold_gap (one, from_ms, until_ms, packs) VALUES (1, :from, :until, :packs)"
                        + " ON CONFLICT (one) DO UPDATE SET until_ms = excluded.until_ms")
                .bind("from", gap.from().toEpochMilli())
                .bind("until", gap.until().toEpochMilli())
                .bind("packs", gap.packs())
                .execute();
    }

    private static Optional<Gap> untold(Handle handle) {
        return handle.createQuery("SELECT from_ms, until_ms, packs FROM untold_gap")
                .map((row, context) -> new Gap(
                        Instant.ofEpochMilli(row.getLong(1)), Instant.ofEpochMilli(row.getLong(2)), row.getLong(3)))
                .findOne();
    }

    /** In the transaction that writes the messages about it. */
    static void told(Handle handle) {
        handle.execute("DELETE FROM untold_gap");
    }

    void beat(Instant now) {
        jdbi.useHandle(handle -> handle.createUpdate("INSERT INTO pulse (one, at_ms) VALUES (1, :now)"
                        + " ON CONFLICT (one) DO UPDATE SET at_ms = excluded.at_ms")
                .bind("now", now.toEpochMilli())
                .execute());
    }
}
