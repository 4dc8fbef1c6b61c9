package org.duskline.web.door;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** The accounts on disk. */
final class Accounts {
    private Accounts() {}

    static boolean any(Handle handle) {
        return handle.createQuery("SELECT EXISTS (SELECT 1 FROM account)")
                .mapTo(Boolean.class)
                .one();
    }

    static List<Account> all(Handle handle) {
        return handle.createQuery("SELECT id, name, role FROM account ORDER BY id")
                .map(Accounts::read)
                .list();
    }

    static Optional<Account> named(Handle handle, String name) {
        return handle.createQuery("SELECT id, name, role FROM account WHERE name = :name")
                .bind("name", name)
                .map(Accounts::read)
                .findOne();
    }

    static Optional<String> passwordHash(Handle handle, String name) {
        return handle.createQuery("SELECT password_hash FROM account WHERE name = :name")
                .bind("name", name)
                .mapTo(String.class)
                .findOne();
    }

    static Account add(Handle handle, String name, Account.Role role, String passwordHash, Instant made) {
        long id = handle.createQuery("INSERT INTO account (name, role, password_hash, made_ms)"
                        + " VALUES (:name, :role, :hash, :made) RETURNING id")
                .bind("name", name)
                .bind("role", role.name())
                .bind("hash", passwordHash)
                .bind("made", made.toEpochMilli())
                .mapTo(Long.class)
                .one();
        return new Account(id, name, role);
    }

    static void password(Handle handle, Account account, String passwordHash) {
        handle.createUpdate("UPDATE account SET password_hash = :hash WHERE id = :id")
                .bind("hash", passwordHash)
                .bind("id", account.id())
                .execute();
    }

    static Account read(ResultSet row, StatementContext context) throws SQLException {
        return new Account(row.getLong("id"), row.getString("name"), Account.Role.valueOf(row.getString("role")));
    }
}
