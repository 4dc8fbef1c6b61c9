package org.duskline.web.deliver;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.duskline.analyzer.finding.Kind;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The curve beside what is told: drawn when the message is sent, or as the address at which it is drawn. A picture that
 * fails, or takes too long, is left out; the message goes all the same.
 */
final class Pictures implements AutoCloseable {
    /** A picture that travels inside a message. */
    record Picture(String trap, byte[] png) {}

    private static final Logger LOG = LoggerFactory.getLogger(Pictures.class);
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Set<Kind> DRAWN = EnumSet.of(Kind.MOVE_IN, Kind.DEPARTURE, Kind.ROBBING);

    private final Optional<Artist> artist;
    private final Optional<URI> pages;
    private final Duration patience;
    private final ExecutorService thread = Executors.newSingleThreadExecutor(task -> {
        Thread made = new Thread(task, "pictures");
        made.setDaemon(true);
        return made;
    });

    /**
     * @param artist who draws, if anybody
     * @param pages where readers' browsers find the pages
     * @param patience how long drawing one may take
     */
    Pictures(Optional<Artist> artist, Optional<URI> pages, Duration patience) {
        this.artist = artist;
        this.pages = pages;
        this.patience = patience;
    }

    static Pictures none() {
        return new Pictures(Optional.empty(), Optional.empty(), Duration.ofSeconds(1));
    }

    private record Drawn(String trap, Kind kind, Instant onset) {}

    /** What an alert tells of, where that is drawn. */
    private static Optional<Drawn> drawn(Alert alert) {
        try {
            JsonNode finding = JSON.readTree(alert.object());
            return Arrays.stream(Kind.values())
                    .filter(kind -> DRAWN.contains(kind)
                            && kind.wireName().equals(finding.path("kind").asText()))
                    .findFirst()
                    .map(kind -> new Drawn(
                            finding.path("trap").asText(),
                            kind,
                            Instant.parse(finding.path("onset").asText())));
        } catch (JsonProcessingException | DateTimeException noFinding) {
            return Optional.empty();
        }
    }

    /** Where the picture of an alert is drawn for who has signed in. */
    Optional<String> address(Alert alert) {
        return artist.flatMap(there -> pages)
                .flatMap(start -> drawn(alert)
                        .map(one -> start + (start.toString().endsWith("/") ? "" : "/") + "story.png?finding="
                                + URLEncoder.encode(
                                        FindingName.of(one.kind(), one.onset(), one.trap()), StandardCharsets.UTF_8)));
    }

    /** Draws the picture of an alert now. */
    Optional<Picture> of(Alert alert) {
        return artist.flatMap(hand -> drawn(alert).flatMap(one -> {
            Future<Optional<byte[]>> work = thread.submit(() -> hand.png(one.trap(), one.onset()));
            return waited(work, one.trap()).map(png -> new Picture(one.trap(), png));
        }));
    }

    private Optional<byte[]> waited(Future<Optional<byte[]>> work, String trap) {
        try {
            return work.get(patience.toMillis(), TimeUnit.MILLISECONDS);
        } catch (ExecutionException failed) {
            LOG.warn(
                    "The message about {} goes without its picture: {}",
                    trap,
                    failed.getCause().toString());
        } catch (TimeoutException slow) {
            work.cancel(true);
            LOG.warn(
                    "The message about {} goes without its picture: drawing took over {} s.",
                    trap,
                    patience.toSeconds());
        } catch (InterruptedException stopping) {
            work.cancel(true);
            Thread.currentThread().interrupt();
        }
        return Optional.empty();
    }

    @Override
    public void close() {
        thread.shutdownNow();
    }
}
