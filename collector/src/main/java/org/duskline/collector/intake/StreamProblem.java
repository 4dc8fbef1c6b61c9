package org.duskline.collector.intake;

/** A recorded stream cannot be opened, read on or written; the message says which file, where, and what to do. */
public final class StreamProblem extends RuntimeException {
    StreamProblem(String message, Throwable cause) {
        super(message, cause);
    }
}
