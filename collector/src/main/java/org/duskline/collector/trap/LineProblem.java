package org.duskline.collector.trap;

/** A file with a line of traps cannot be used; the message says which feature is wrong and what to do. */
public final class LineProblem extends RuntimeException {
    LineProblem(String message) {
        super(message);
    }

    LineProblem(String message, Throwable cause) {
        super(message, cause);
    }
}
