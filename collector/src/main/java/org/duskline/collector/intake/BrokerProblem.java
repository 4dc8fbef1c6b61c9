package org.duskline.collector.intake;

/** The embedded broker cannot start or stop; the message says where and what to do. */
public final class BrokerProblem extends RuntimeException {
    private static final long serialVersionUID = 1;

    BrokerProblem(String words, Throwable cause) {
        super(words, cause);
    }
}
