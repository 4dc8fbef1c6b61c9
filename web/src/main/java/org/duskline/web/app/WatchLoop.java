package org.duskline.web.app;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.watch.Analyzer;
import org.duskline.collector.instruction.Instructions;
import org.duskline.collector.intake.BrokerPublisher;
import org.duskline.collector.intake.BrokerSource;
import org.duskline.collector.intake.BrokerUnreachable;
import org.duskline.collector.store.LineBook;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.web.deliver.Courier;
import org.duskline.web.page.News;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one thread that thinks: whenever something was stored it lets the analyser catch up, tells what was found and
 * leaves word that it is alive. A failure is said and tried again; the thread ends only when it is asked to.
 */
final class WatchLoop {
    private static final long PATIENCE_MILLIS = 500;
    private static final long AFTER_FAILURE_SECONDS = 5;
    private static final long HEARTBEAT_NANOS = Duration.ofSeconds(30).toNanos();
    private static final long LATELY_NANOS = Duration.ofMinutes(5).toNanos();
    private static final Logger log = LoggerFactory.getLogger(WatchLoop.class);

    private final Hearing hearing;
    private final Analyzer analyzer;
    private final LineBook line;
    private final Courier courier;
    private final BrokerSource source;
    private final BrokerPublisher publisher;
    private final Missed missed;
    private final Instructions instructions;
    private final InstantSource clock;
    private final CountDownLatch stopping = new CountDownLatch(1);
    private volatile Map<String, Condition> conditions = Map.of();
    private Consumer<News> news = told -> {};
    private boolean connected;
    private volatile long lastLook = System.nanoTime() - LATELY_NANOS;
    private long lastHeartbeat = System.nanoTime() - HEARTBEAT_NANOS;

    WatchLoop(
            Hearing hearing,
            Analyzer analyzer,
            LineBook line,
            Courier courier,
            BrokerSource source,
            BrokerPublisher publisher,
            Missed missed,
            Instructions instructions,
            InstantSource clock) {
        this.hearing = hearing;
        this.analyzer = analyzer;
        this.line = line;
        this.courier = courier;
        this.source = source;
        this.publisher = publisher;
        this.missed = missed;
        this.instructions = instructions;
        this.clock = clock;
    }

    /** The condition of a trap as of the last look; any thread. */
    Condition condition(String trap) {
        return conditions.getOrDefault(trap, Condition.QUIET);
    }

    /** Begins to look, and tells whoever has a page open. Closing what is returned ends it after the look at hand. */
    AutoCloseable start(Consumer<News> listener) {
        news = listener;
        Thread thread = new Thread(this::run, "watch");
        thread.setDaemon(true);
        thread.start();
        return () -> {
            stopping.countDown();
            thread.join();
        };
    }

    private void run() {
        try {
            while (stopping.getCount() > 0) {
                Set<String> spoke = hearing.await(PATIENCE_MILLIS);
                if (!lookSafely(spoke)) {
                    stopping.await(AFTER_FAILURE_SECONDS, TimeUnit.SECONDS);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private boolean lookSafely(Set<String> spoke) {
        try {
            look(spoke);
            return true;
        } catch (RuntimeException e) {
            log.error("Looking at what has arrived failed and is tried again: {}", e.getMessage(), e);
            return false;
        }
    }

    private void look(Set<String> spoke) {
        List<Finding> changes = new ArrayList<>(analyzer.advance());
        changes.addAll(analyzer.tick(clock.instant()));
        tell(changes);
        missed.looked(changes, source.state().connected());
        conditions = conditionsNow();
        courier.go(conditions);
        instruct();
        heard(spoke).forEach(trap -> news.accept(new News.Heard(trap)));
        if (source.state().connected() != connected) {
            connected = !connected;
            news.accept(new News.LinkChanged());
        }
        heartbeat();
        lastLook = System.nanoTime();
    }

    /** Whether what arrives has been read lately and the broker is heard; any thread. */
    boolean well() {
        return System.nanoTime() - lastLook < LATELY_NANOS && source.state().connected();
    }

    private void tell(List<Finding> changes) {
        for (Finding finding : changes) {
            log.info(
                    "{} at {} ({}) since {}: {}",
                    finding.kind().wireName(),
                    finding.trap(),
                    finding.stage().wireName(),
                    finding.onset(),
                    finding.summary());
            news.accept(new News.Found(finding));
        }
    }

    private Map<String, Condition> conditionsNow() {
        Map<String, Condition> now = new HashMap<>();
        for (Trap trap : line.traps()) {
            now.put(trap.name(), analyzer.condition(trap.name()));
        }
        return Map.copyOf(now);
    }

    private List<String> heard(Set<String> nodes) {
        Instant now = clock.instant();
        return nodes.isEmpty()
                ? List.of()
                : line.fittings().stream()
                        .filter(fitting -> nodes.contains(fitting.node()) && fitting.covers(now))
                        .map(Fitting::trap)
                        .toList();
    }

    private void instruct() {
        try {
            instructions.send();
        } catch (BrokerUnreachable e) {
            log.debug("Settings of nodes wait: {}", e.getMessage());
        }
    }

    private void heartbeat() {
        if (System.nanoTime() - lastHeartbeat < HEARTBEAT_NANOS) {
            return;
        }
        lastHeartbeat = System.nanoTime();
        try {
            publisher.heartbeat(
                    ("online " + clock.instant().truncatedTo(ChronoUnit.SECONDS)).getBytes(StandardCharsets.UTF_8));
        } catch (BrokerUnreachable e) {
            log.debug("No heartbeat: {}", e.getMessage());
        }
    }
}
