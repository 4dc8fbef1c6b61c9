package org.duskline.web.door;

/**
 * Somebody who may sign in.
 *
 * @param id its number
 * @param name by which its holder signs in, and under which what they write is kept
 * @param role what it was made as
 */
public record Account(long id, String name, Role role) {
    /** What an account was made as. */
    public enum Role {
        /** Made first, on the machine itself. */
        OWNER,
        /** Invited by somebody who has an account. */
        KEEPER
    }
}
