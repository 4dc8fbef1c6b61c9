package org.duskline.web.deliver;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Which channels are dead, and that it is said once through the others. */
final class ChannelHealth {
    /** How long nothing may get through before the others are told. */
    static final Duration PATIENCE = Duration.ofHours(1);

    private final Jdbi jdbi;

    ChannelHealth(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    void works(Channel channel) {
        jdbi.useHandle(handle -> handle.createUpdate(
                        "UPDATE channel SET failing_since_ms = NULL, death_told = 0 WHERE id = :id"
                                + " AND failing_since_ms IS NOT NULL")
                .bind("id", channel.id())
                .execute());
    }

    void fails(Channel channel, String words, Instant now) {
        jdbi.useTransaction(handle -> {
            handle.createUpdate("UPDATE channel SET failing_since_ms = coalesce(failing_since_ms, :now) WHERE id = :id")
                    .bind("now", now.toEpochMilli())
                    .bind("id", channel.id())
                    .execute();
            Instant since = channel.failingSince().orElse(now);
            boolean dead = !since.plus(PATIENCE).isAfter(now);
            if (dead && notToldYet(handle, channel)) {
                tellTheOthers(handle, channel, since, words, now);
            }
        });
    }

    private static boolean notToldYet(Handle handle, Channel channel) {
        return handle.createUpdate("UPDATE channel SET death_told = 1 WHERE id = :id AND death_told = 0")
                        .bind("id", channel.id())
                        .execute()
                > 0;
    }

    /** Through the person's own other channels; if there are none, through everybody's. */
    private static void tellTheOthers(Handle handle, Channel dead, Instant since, String words, Instant now) {
        List<Channel> others = AddressBook.channels(handle).stream()
                .filter(channel -> channel.id() != dead.id())
                .toList();
        List<Channel> own = others.stream()
                .filter(channel -> channel.person().equals(dead.person()))
                .toList();
        for (Channel channel : own.isEmpty() ? others : own) {
            AlertText.Written written = AlertText.deadChannel(dead, since, words, channel.person());
            AlertRow.notice(channel.id(), "channel/" + dead.id() + "/" + since, written, now)
                    .insert(handle);
        }
    }
}
