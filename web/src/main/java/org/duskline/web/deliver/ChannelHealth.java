package org.duskline.web.deliver;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
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

    private static void tellTheOthers(Handle handle, Channel dead, Instant since, String words, Instant now) {
        for (Channel channel : tellers(AddressBook.channels(handle), dead)) {
            AlertText.Written written = AlertText.deadChannel(dead, since, words, channel.person());
            AlertRow.notice(channel.id(), "channel/" + dead.id() + "/" + since, written, now)
                    .insert(handle);
        }
    }

    /**
     * The person's own other channels that work; if there are none, everybody's that work. What is told through a
     * channel that is dead itself comes when it is long over; so that is done only where nothing else is left.
     */
    private static List<Channel> tellers(List<Channel> all, Channel dead) {
        List<Channel> others =
                all.stream().filter(channel -> channel.id() != dead.id()).toList();
        List<Channel> working = others.stream()
                .filter(channel -> channel.failingSince().isEmpty())
                .toList();
        List<Channel> own = working.stream()
                .filter(channel -> channel.person().equals(dead.person()))
                .toList();
        return Stream.of(own, working)
                .filter(some -> !some.isEmpty())
                .findFirst()
                .orElse(others);
    }
}
