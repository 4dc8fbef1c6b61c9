package org.duskline.collector.testing;

import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;

/** Waits for something to become true; the limit is generous and only ends a test that would never end. */
public final class Await {
    private static final Duration LIMIT = Duration.ofSeconds(90);

    private Await() {}

    public static void until(String what, Callable<Boolean> condition) throws Exception {
        long end = System.nanoTime() + LIMIT.toNanos();
        while (!condition.call()) {
            if (System.nanoTime() > end) {
                throw new AssertionError("Waited in vain until " + what);
            }
            TimeUnit.MILLISECONDS.sleep(20);
        }
    }
}
