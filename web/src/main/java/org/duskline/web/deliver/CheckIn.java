package org.duskline.web.deliver;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.InstantSource;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Says at an address outside, every five minutes, that all is well, and keeps silent when it is not: whoever listens there
 * raises the alarm when nothing comes. A machine that has lost its power can tell nobody anything by itself.
 */
public final class CheckIn implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(CheckIn.class);
    private static final Duration BETWEEN = Duration.ofMinutes(5);
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final URI address;
    private final BooleanSupplier well;
    private final InstantSource clock;
    private final HttpClient client;
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread made = new Thread(task, "check-in");
        made.setDaemon(true);
        return made;
    });

    /**
     * @param address where to say so; what stands behind its host may be a secret and is never logged
     * @param well whether what arrives is being read and the broker is heard
     */
    public CheckIn(URI address, BooleanSupplier well, InstantSource clock) {
        this.address = address;
        this.well = well;
        this.clock = clock;
        this.client = HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    }

    /** Begins; the first time at once. */
    public void start() {
        thread.scheduleWithFixedDelay(this::guarded, 0, BETWEEN.toMillis(), TimeUnit.MILLISECONDS);
    }

    private void guarded() {
        try {
            once();
        } catch (RuntimeException failed) {
            LOG.warn("Checking in at {} failed inside Duskline: {}", address.getHost(), failed.getMessage());
        }
    }

    /** Says so once, if all is well. @return whether it was said and heard */
    boolean once() {
        if (!well.getAsBoolean()) {
            LOG.warn(
                    "Not checking in at {}: nothing has been read for a while, or the broker is not heard.",
                    address.getHost());
            return false;
        }
        HttpRequest request = HttpRequest.newBuilder(address)
                .timeout(PATIENCE)
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString("{\"alive\":\"" + clock.instant() + "\"}"))
                .build();
        try {
            int status =
                    client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
            if (status >= 300) {
                LOG.warn(
                        "Checking in at {} was answered with {}. Look whether checkin.url is right.",
                        address.getHost(),
                        status);
            }
            return status < 300;
        } catch (IOException unreachable) {
            LOG.warn("Nobody heard the check-in at {}: {}", address.getHost(), unreachable.getMessage());
            return false;
        } catch (InterruptedException stopping) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    @Override
    public void close() {
        thread.shutdownNow();
    }
}
