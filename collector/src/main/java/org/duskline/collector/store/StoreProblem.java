package org.duskline.collector.store;

/** The database file cannot be opened, read or written; the message says which file, what failed and what to do. */
public final class StoreProblem extends RuntimeException {
    StoreProblem(String message, Throwable cause) {
        super(message, cause);
    }
}
