package org.duskline.web.deliver;

import java.nio.charset.StandardCharsets;
import org.duskline.collector.intake.BrokerUnreachable;

/** Publishes each alert under its trap. Repeating after a failure is harmless: the object names thread and step. */
final class BrokerCarrier implements Carrier {
    /** Stands where a trap's name would for what is about no trap. */
    private static final String THE_PROGRAM = "duskline";

    private final Broker broker;

    BrokerCarrier(Broker broker) {
        this.broker = broker;
    }

    @Override
    public Outcome carry(Channel channel, Parcel parcel) {
        try {
            for (Alert alert : parcel.alerts()) {
                String object = ParcelJson.alert(alert);
                broker.alert(alert.trap().orElse(THE_PROGRAM), object.getBytes(StandardCharsets.UTF_8));
            }
            return new Outcome.Delivered("The broker has confirmed it.");
        } catch (BrokerUnreachable failed) {
            return new Outcome.Failed(failed.getMessage());
        }
    }
}
