package org.duskline.web.deliver;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/** When the program was last alive, so that the next start knows how long nobody was watching. */
public final class Pulse {
    /** A restart shorter than this is no news. */
    static final Duration WORTH_TELLING = Duration.ofMinutes(10);

    /** A time in which the program did not run. */
    public record Gap(Instant from, Instant until) {}

    private final Jdbi jdbi;

    Pulse(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** The time since the last beat, if it is long enough to be told. */
    Optional<Gap> gap(Instant now) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT at_ms FROM pulse")
                        .mapTo(Long.class)
                        .findOne())
                .map(Instant::ofEpochMilli)
                .filter(last -> !last.plus(WORTH_TELLING).isAfter(now))
                .map(last -> new Gap(last, now));
    }

    void beat(Instant now) {
        jdbi.useHandle(handle -> handle.createUpdate("INSERT INTO pulse (one, at_ms) VALUES (1, :now)"
                        + " ON CONFLICT (one) DO UPDATE SET at_ms = excluded.at_ms")
                .bind("now", now.toEpochMilli())
                .execute());
    }
}
