package org.duskline.collector.intake;

/** The broker has not confirmed a message; the words say why and what to do. */
public final class BrokerUnreachable extends Exception {
    private static final long serialVersionUID = 1;

    public BrokerUnreachable(String words) {
        super(words);
    }

    BrokerUnreachable(String words, Throwable cause) {
        super(words, cause);
    }
}
