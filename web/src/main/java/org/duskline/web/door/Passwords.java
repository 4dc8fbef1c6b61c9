package org.duskline.web.door;

import com.password4j.Argon2Function;
import com.password4j.Hash;
import com.password4j.Password;
import com.password4j.types.Argon2;

/**
 * Passwords as they are kept: Argon2id (RFC 9106) with 19 MiB, two passes and one lane, the least that the OWASP Password
 * Storage Cheat Sheet recommends. Computed one at a time, so that many who try at once don't take all memory.
 */
final class Passwords {
    private static final int MEMORY_KIB = 19_456;
    private static final int PASSES = 2;
    private static final int LANES = 1;
    private static final int HASH_BYTES = 32;
    private static final int SALT_BYTES = 16;

    /** NIST SP 800-63B asks for 8 at least, and for no rules on which characters. */
    static final int SHORTEST = 10;

    static final int LONGEST = 200;

    private final String nobodys = hash("nobody has this password");

    synchronized String hash(String password) {
        Hash hash = Password.hash(password)
                .addRandomSalt(SALT_BYTES)
                .with(Argon2Function.getInstance(MEMORY_KIB, PASSES, LANES, HASH_BYTES, Argon2.ID));
        return hash.getResult();
    }

    synchronized boolean fits(String password, String hash) {
        return password.length() <= LONGEST
                && Password.check(password, hash).with(Argon2Function.getInstanceFromHash(hash));
    }

    /** Takes as long as a true check, so that the time doesn't tell which names have an account. */
    void waste(String password) {
        if (fits(password, nobodys)) {
            throw new IllegalStateException("Nobody's password was given for a name without an account.");
        }
    }

    static void check(String password) {
        if (password.length() < SHORTEST) {
            throw new DoorRefusal("A password needs at least " + SHORTEST
                    + " characters; a few words in a row are easy to remember and hard to guess.");
        }
        if (password.length() > LONGEST) {
            throw new DoorRefusal("A password can have " + LONGEST + " characters at most.");
        }
    }
}
