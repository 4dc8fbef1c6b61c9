package org.duskline.web.deliver;

import org.duskline.collector.intake.BrokerPublisher;
import org.duskline.collector.intake.BrokerUnreachable;

/** What delivery needs of a broker. */
public interface Broker {
    /**
     * Tells an alert; returns when the broker has confirmed it.
     *
     * @throws BrokerUnreachable if it has not
     */
    void alert(String trap, byte[] payload) throws BrokerUnreachable;

    /**
     * Says that the program is alive.
     *
     * @throws BrokerUnreachable if the broker has not confirmed it
     */
    void heartbeat(byte[] payload) throws BrokerUnreachable;

    /** The broker behind a publisher. */
    static Broker of(BrokerPublisher publisher) {
        return new Broker() {
            @Override
            public void alert(String trap, byte[] payload) throws BrokerUnreachable {
                publisher.alert(trap, payload);
            }

            @Override
            public void heartbeat(byte[] payload) throws BrokerUnreachable {
                publisher.heartbeat(payload);
            }
        };
    }
}
