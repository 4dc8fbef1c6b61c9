package org.duskline.web.deliver;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/** A clock that goes only when told to. */
final class SetClock implements InstantSource {
    private volatile Instant now;

    SetClock(Instant now) {
        this.now = now;
    }

    @Override
    public Instant instant() {
        return now;
    }

    void set(Instant time) {
        now = time;
    }

    void pass(Duration time) {
        now = now.plus(time);
    }
}
