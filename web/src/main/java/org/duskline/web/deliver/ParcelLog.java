package org.duskline.web.deliver;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The messages of every channel, with what became of each. A channel's messages go out one after the other: the next is
 * put together only when the one before it is sent or given up, and then holds all that has come in the meantime.
 */
final class ParcelLog {
    private final Jdbi jdbi;

    ParcelLog(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** The channel's message to be sent next: the one under way, or a new one of the alerts that are due. */
    Optional<Parcel> next(long channel, Instant now) {
        return jdbi.inTransaction(handle -> {
            Optional<Long> underWay = handle.createQuery("SELECT id FROM parcel WHERE channel = :channel AND state IN"
                            + " ('WAITING', 'FAILED') ORDER BY id LIMIT 1")
                    .bind("channel", channel)
                    .mapTo(Long.class)
                    .findOne();
            return underWay.or(() -> gather(handle, channel, now)).map(id -> read(handle, id));
        });
    }

    private record Open(long id, String thread, boolean opens) {}

    private static Optional<Long> gather(Handle handle, long channel, Instant now) {
        List<Open> open = handle.createQuery(
                        "SELECT id, thread, opens, due_ms <= :now FROM alert WHERE channel = :channel"
                                + " AND parcel IS NULL AND dropped IS NULL AND due_ms <= :soon ORDER BY id")
                .bind("channel", channel)
                .bind("now", now.toEpochMilli())
                .bind("soon", now.plus(Outbox.GATHERING).toEpochMilli())
                .map((row, context) -> new Open(row.getLong(1), row.getString(2), row.getBoolean(3)))
                .list();
        if (open.isEmpty() || !due(handle, channel, now)) {
            return Optional.empty();
        }
        List<Open> together = together(open);
        long parcel = handle.createQuery("INSERT INTO parcel (channel, made_ms, next_ms, state) VALUES (:channel, :now,"
                        + " :now, 'WAITING') RETURNING id")
                .bind("channel", channel)
                .bind("now", now.toEpochMilli())
                .mapTo(Long.class)
                .one();
        for (Open alert : together) {
            handle.createUpdate("UPDATE alert SET parcel = :parcel WHERE id = :id")
                    .bind("parcel", parcel)
                    .bind("id", alert.id())
                    .execute();
        }
        return Optional.of(parcel);
    }

    private static boolean due(Handle handle, long channel, Instant now) {
        return handle.createQuery(
                                "SELECT count(*) FROM alert WHERE channel = :channel AND parcel IS NULL AND dropped IS"
                                        + " NULL AND due_ms <= :now")
                        .bind("channel", channel)
                        .bind("now", now.toEpochMilli())
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    /** New happenings share a message; a later step goes alone into its own thread. Nothing overtakes. */
    private static List<Open> together(List<Open> open) {
        Open first = open.get(0);
        List<Open> together = new ArrayList<>();
        for (Open alert : open) {
            boolean fits = first.opens()
                    ? alert.opens()
                    : !alert.opens() && alert.thread().equals(first.thread());
            if (!fits) {
                break;
            }
            together.add(alert);
        }
        return together;
    }

    void sent(Parcel parcel, String words, Instant now) {
        end(parcel, State.SENT, words, now);
    }

    void givenUp(Parcel parcel, Instant now) {
        end(parcel, State.GIVEN_UP, parcel.words(), now);
    }

    private void end(Parcel parcel, State state, String words, Instant now) {
        jdbi.useHandle(handle -> handle.createUpdate(
                        "UPDATE parcel SET state = :state, words = :words, done_ms = :now, tries = tries + :tried"
                                + " WHERE id = :id")
                .bind("state", state.name())
                .bind("words", words)
                .bind("now", now.toEpochMilli())
                .bind("tried", state == State.SENT ? 1 : 0)
                .bind("id", parcel.id())
                .execute());
    }

    void failed(Parcel parcel, String words, Instant next) {
        jdbi.useHandle(
                handle -> handle.createUpdate("UPDATE parcel SET state = 'FAILED', words = :words, next_ms = :next,"
                                + " tries = tries + 1 WHERE id = :id")
                        .bind("words", words)
                        .bind("next", next.toEpochMilli())
                        .bind("id", parcel.id())
                        .execute());
    }

    /** The newest messages of all channels, newest first. */
    List<Parcel> latest(int limit) {
        return jdbi.withHandle(handle -> handle
                .createQuery("SELECT id FROM parcel ORDER BY id DESC LIMIT :limit")
                .bind("limit", limit)
                .mapTo(Long.class)
                .list()
                .stream()
                .map(id -> read(handle, id))
                .toList());
    }

    /** What is not in a message yet, the first due first. */
    List<Pending> pending() {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT channel, title, due_ms FROM alert"
                        + " WHERE parcel IS NULL AND dropped IS NULL ORDER BY due_ms, id")
                .map((row, context) ->
                        new Pending(row.getLong(1), row.getString(2), Instant.ofEpochMilli(row.getLong(3))))
                .list());
    }

    private static Parcel read(Handle handle, long id) {
        List<Alert> alerts = handle.createQuery("SELECT * FROM alert WHERE parcel = :id ORDER BY id")
                .bind("id", id)
                .map((row, context) -> alert(row))
                .list();
        List<Long> earlier = handle.createQuery("SELECT DISTINCT earlier.parcel FROM alert JOIN alert earlier ON"
                        + " earlier.channel = alert.channel AND earlier.thread = alert.thread AND earlier.parcel <"
                        + " alert.parcel WHERE alert.parcel = :id ORDER BY earlier.parcel")
                .bind("id", id)
                .mapTo(Long.class)
                .list();
        return handle.createQuery("SELECT * FROM parcel WHERE id = :id")
                .bind("id", id)
                .map((row, context) -> parcel(row, alerts, earlier))
                .one();
    }

    private static Alert alert(ResultSet row) throws SQLException {
        return new Alert(
                row.getLong("id"),
                row.getString("thread"),
                row.getString("step"),
                Optional.ofNullable(row.getString("trap")),
                row.getString("title"),
                row.getString("words"),
                row.getString("object"),
                Instant.ofEpochMilli(row.getLong("written_ms")));
    }

    private static Parcel parcel(ResultSet row, List<Alert> alerts, List<Long> earlier) throws SQLException {
        long done = row.getLong("done_ms");
        return new Parcel(
                row.getLong("id"),
                row.getLong("channel"),
                Instant.ofEpochMilli(row.getLong("made_ms")),
                Instant.ofEpochMilli(row.getLong("next_ms")),
                row.getInt("tries"),
                State.valueOf(row.getString("state")),
                row.getString("words"),
                done == 0 ? Optional.empty() : Optional.of(Instant.ofEpochMilli(done)),
                alerts,
                earlier);
    }
}
