/**
 * Who may come in: accounts, passwords (Argon2id), sessions, one-time codes, and the tokens by which a form proves that it
 * was ours. {@link org.duskline.web.door.Door} is the entry.
 * <p>May import the collector's store. Speaks neither HTTP nor HTML: the pages' gate does, and asks here. What a person
 * may do once inside is decided by the pages. Safe for many threads; passwords are computed one at a time, because each
 * takes 19 MiB of memory.
 */
package org.duskline.web.door;
