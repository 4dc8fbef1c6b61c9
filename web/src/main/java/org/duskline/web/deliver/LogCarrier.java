package org.duskline.web.deliver;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Writes the one line of each alert to the program's log. Links are left out: they let their reader answer. */
final class LogCarrier implements Carrier {
    private static final Logger LOG = LoggerFactory.getLogger("org.duskline.told");

    @Override
    public Outcome carry(Channel channel, Parcel parcel) {
        for (Alert alert : parcel.alerts()) {
            LOG.info("Told {}: {}", channel.person().name(), alert.title());
        }
        return new Outcome.Delivered("Written to the log.");
    }
}
