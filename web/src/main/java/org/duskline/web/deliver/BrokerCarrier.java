package org.duskline.web.deliver;

import java.nio.charset.StandardCharsets;
import org.duskline.collector.intake.BrokerUnreachable;

/**
 * Publishes each alert under the channel's own topic. Repeating after a failure is harmless: the object names thread and
 * step.
 */
final class BrokerCarrier implements Carrier {
    private final Broker broker;

    BrokerCarrier(Broker broker) {
        this.broker = broker;
    }

    @Override
    public Outcome carry(Channel channel, Parcel parcel) {
        try {
            for (Alert alert : parcel.alerts()) {
                broker.tell(channel.address(), ParcelJson.alert(alert).getBytes(StandardCharsets.UTF_8));
            }
            return new Outcome.Delivered("The broker has confirmed it.");
        } catch (BrokerUnreachable failed) {
            return new Outcome.Failed(failed.getMessage());
        }
    }
}
