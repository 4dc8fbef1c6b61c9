package org.duskline.web.deliver;

import java.security.SecureRandom;
import java.util.HexFormat;
import org.jdbi.v3.core.Jdbi;

/** The installation's own name, which makes its messages' identities unlike any other's, and its key for links. */
record Keyring(String name, byte[] linkKey) {
    private static final int NAME_BYTES = 6;
    private static final int KEY_BYTES = 32;

    /** Reads it, or draws it at the first start. */
    static Keyring of(Jdbi jdbi) {
        return jdbi.inTransaction(handle -> {
            handle.createUpdate(
                            "INSERT INTO keyring (one, name, link_key) VALUES (1, :name, :key) ON CONFLICT DO NOTHING")
                    .bind("name", drawn(NAME_BYTES))
                    .bind("key", drawn(KEY_BYTES))
                    .execute();
            return handle.createQuery("SELECT name, link_key FROM keyring")
                    .map((row, context) ->
                            new Keyring(row.getString(1), HexFormat.of().parseHex(row.getString(2))))
                    .one();
        });
    }

    private static String drawn(int bytes) {
        byte[] random = new byte[bytes];
        new SecureRandom().nextBytes(random);
        return HexFormat.of().formatHex(random);
    }

    @Override
    public String toString() {
        return "keyring of " + name;
    }
}
