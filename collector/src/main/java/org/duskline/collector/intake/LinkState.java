package org.duskline.collector.intake;

import java.time.Instant;
import java.util.Optional;

/**
 * How the connection to the broker stands.
 *
 * @param connectedSince since when it has stood; empty while it is down
 * @param trouble the last thing that went wrong, in words with what to do next; empty if nothing has
 * @param troubleAt when that was
 * @param lastMessage when the last message came; empty if none has since the start
 */
public record LinkState(
        Optional<Instant> connectedSince,
        Optional<String> trouble,
        Optional<Instant> troubleAt,
        Optional<Instant> lastMessage) {
    static final LinkState UNTRIED =
            new LinkState(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    public boolean connected() {
        return connectedSince.isPresent();
    }

    LinkState up(Instant now) {
        return new LinkState(Optional.of(now), trouble, troubleAt, lastMessage);
    }

    LinkState down() {
        return new LinkState(Optional.empty(), trouble, troubleAt, lastMessage);
    }

    LinkState troubled(String words, Instant now) {
        return new LinkState(connectedSince, Optional.of(words), Optional.of(now), lastMessage);
    }

    LinkState heard(Instant now) {
        return new LinkState(connectedSince, trouble, troubleAt, Optional.of(now));
    }
}
