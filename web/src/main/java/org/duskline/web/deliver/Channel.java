package org.duskline.web.deliver;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import org.duskline.analyzer.finding.Kind;

/**
 * One way to one person.
 *
 * @param id the number under which it is kept
 * @param person whom it reaches
 * @param means how
 * @param address where to, in the form that the means asks for
 * @param secret what signs a webhook's messages; empty otherwise
 * @param kinds the kinds of finding that the person wants here
 * @param failingSince since when nothing has got through, if so
 */
public record Channel(
        long id,
        Person person,
        Means means,
        String address,
        String secret,
        Set<Kind> kinds,
        Optional<Instant> failingSince) {
    public Channel {
        kinds = Set.copyOf(kinds);
    }

    /** For messages to people: "e-mail to keeper@line.example". A webhook is named by its host alone. */
    public String named() {
        return switch (means) {
            case EMAIL -> "e-mail to " + address;
            case WEBHOOK -> "webhook at " + java.net.URI.create(address).getHost();
            case MQTT -> "broker, topic level " + address;
            case LOG -> "log";
        };
    }

    /** Never shows the secret, nor a webhook's path, which may hold one. */
    @Override
    public String toString() {
        return "channel " + id + " of " + person.name() + " (" + named() + ")";
    }
}
