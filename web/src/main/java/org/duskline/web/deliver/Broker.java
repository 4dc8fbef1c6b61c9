package org.duskline.web.deliver;

import org.duskline.collector.intake.BrokerPublisher;
import org.duskline.collector.intake.BrokerUnreachable;

/** What delivery needs of a broker. */
@FunctionalInterface
public interface Broker {
    /**
     * Tells somebody; returns when the broker has confirmed it.
     *
     * @param whom the last level of the topic
     * @throws BrokerUnreachable if it has not
     */
    void tell(String whom, byte[] payload) throws BrokerUnreachable;

    /** The broker behind a publisher. */
    static Broker of(BrokerPublisher publisher) {
        return publisher::tell;
    }
}
