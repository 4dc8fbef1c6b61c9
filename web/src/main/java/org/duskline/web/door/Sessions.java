package org.duskline.web.door;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Who is signed in where. Kept by the hash of what the browser holds. */
final class Sessions {
    /** A season's phone stays signed in; one that lies in a drawer does not. */
    static final Duration LASTS = Duration.ofDays(60);

    /** How much of its time a session may have used before it is lengthened. */
    private static final Duration LENGTHENED_AFTER = Duration.ofDays(1);

    private Sessions() {}

    static void begin(Handle handle, String token, Account account, Instant now) {
        handle.createUpdate("DELETE FROM visitor_session WHERE ends_ms <= :now")
                .bind("now", now.toEpochMilli())
                .execute();
        handle.createUpdate("INSERT INTO visitor_session (mark, account, begun_ms, ends_ms)"
                        + " VALUES (:mark, :account, :now, :ends)")
                .bind("mark", Secrets.mark(token))
                .bind("account", account.id())
                .bind("now", now.toEpochMilli())
                .bind("ends", now.plus(LASTS).toEpochMilli())
                .execute();
    }

    static Optional<Account> account(Handle handle, String token, Instant now) {
        return handle.createQuery("SELECT account.id AS id, name, role FROM visitor_session"
                        + " JOIN account ON account.id = visitor_session.account"
                        + " WHERE mark = :mark AND ends_ms > :now")
                .bind("mark", Secrets.mark(token))
                .bind("now", now.toEpochMilli())
                .map(Accounts::read)
                .findOne();
    }

    /** Lengthens a session in use, once a day. */
    static void lengthen(Handle handle, String token, Instant now) {
        handle.createUpdate("UPDATE visitor_session SET ends_ms = :ends WHERE mark = :mark AND ends_ms < :worn")
                .bind("ends", now.plus(LASTS).toEpochMilli())
                .bind("worn", now.plus(LASTS).minus(LENGTHENED_AFTER).toEpochMilli())
                .bind("mark", Secrets.mark(token))
                .execute();
    }

    static boolean worn(Handle handle, String token, Instant now) {
        return handle.createQuery(
                        "SELECT EXISTS (SELECT 1 FROM visitor_session WHERE mark = :mark AND ends_ms < :worn)")
                .bind("mark", Secrets.mark(token))
                .bind("worn", now.plus(LASTS).minus(LENGTHENED_AFTER).toEpochMilli())
                .mapTo(Boolean.class)
                .one();
    }

    static void end(Handle handle, String token) {
        handle.createUpdate("DELETE FROM visitor_session WHERE mark = :mark")
                .bind("mark", Secrets.mark(token))
                .execute();
    }

    static void endAll(Handle handle, Account account) {
        handle.createUpdate("DELETE FROM visitor_session WHERE account = :account")
                .bind("account", account.id())
                .execute();
    }
}
