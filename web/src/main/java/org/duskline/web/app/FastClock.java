package org.duskline.web.app;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/** A clock that stands until it is let go, and then runs so many times as fast as the machine's. Any thread. */
final class FastClock implements InstantSource {
    private final Instant start;
    private final double speed;
    private volatile long letGoNanos;
    private volatile boolean running;

    /**
     * @param start what it shows until it is let go
     * @param speed seconds that it shows in a second; above 0
     */
    FastClock(Instant start, double speed) {
        this.start = start;
        this.speed = speed;
    }

    void letGo() {
        letGoNanos = System.nanoTime();
        running = true;
    }

    @Override
    public Instant instant() {
        return running ? start.plusNanos(Math.round((System.nanoTime() - letGoNanos) * speed)) : start;
    }

    /** How long a person waits until it shows that instant; zero if it has. */
    Duration realTimeUntil(Instant shown) {
        Duration left = Duration.between(instant(), shown);
        return left.isNegative() ? Duration.ZERO : Duration.ofNanos(Math.round(left.toNanos() / speed));
    }
}
