package org.duskline.web.app;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Turns Ctrl-C (or a service manager's stop) into an orderly end: the latch is opened, and the machine waits until the
 * command has put everything away.
 */
final class AtInterrupt implements AutoCloseable {
    private static final long LONGEST_SECONDS = 20;

    private final CountDownLatch away = new CountDownLatch(1);
    private final Thread hook;

    AtInterrupt(CountDownLatch interrupted) {
        hook = new Thread(
                () -> {
                    interrupted.countDown();
                    waitUntilAway();
                },
                "at-interrupt");
        Runtime.getRuntime().addShutdownHook(hook);
    }

    private void waitUntilAway() {
        try {
            away.await(LONGEST_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        away.countDown();
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException alreadyStopping) {
            // then the hook has done its work
            return;
        }
    }
}
