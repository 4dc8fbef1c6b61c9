package org.duskline.web.page;

import io.javalin.http.sse.SseClient;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * Tells open pages what has changed, as server-sent events (WHATWG HTML, section 9.2). An event only says what to look
 * at again; the pages fetch it themselves, so that a lost event loses nothing. Many samples in a moment make one event.
 */
final class LiveFeed implements AutoCloseable {
    private static final Duration PAUSE = Duration.ofMillis(700);
    private static final Duration HEARTBEAT = Duration.ofSeconds(20);

    /** A browser drops an event without data, so that one that has nothing to add carries this. */
    private static final String LOOK_AGAIN = "-";

    private final Set<SseClient> clients = ConcurrentHashMap.newKeySet();
    private final Set<Event> waiting = new LinkedHashSet<>();
    private final ScheduledExecutorService sender = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "live-feed");
        thread.setDaemon(true);
        return thread;
    });

    LiveFeed() {
        sender.scheduleWithFixedDelay(this::flush, PAUSE.toMillis(), PAUSE.toMillis(), TimeUnit.MILLISECONDS);
        sender.scheduleWithFixedDelay(
                this::heartbeat, HEARTBEAT.toMillis(), HEARTBEAT.toMillis(), TimeUnit.MILLISECONDS);
    }

    void connect(SseClient client) {
        client.keepAlive();
        client.onClose(() -> clients.remove(client));
        clients.add(client);
        client.sendComment("connected");
    }

    void tell(News news) {
        if (news instanceof News.Heard heard) {
            put("line", LOOK_AGAIN);
            put("trap-" + TrapAddress.of(heard.trap()), LOOK_AGAIN);
        } else if (news instanceof News.Found found) {
            put("line", LOOK_AGAIN);
            put("tonight", LOOK_AGAIN);
            put("alerts", LOOK_AGAIN);
            put("trap-" + TrapAddress.of(found.finding().trap()), LOOK_AGAIN);
            put("told", Told.html(found.finding()));
        } else {
            put("line", LOOK_AGAIN);
            put("tonight", LOOK_AGAIN);
            put("link", LOOK_AGAIN);
        }
    }

    private void put(String event, String data) {
        synchronized (waiting) {
            waiting.add(new Event(event, data));
        }
    }

    private void flush() {
        List<Event> events;
        synchronized (waiting) {
            events = List.copyOf(waiting);
            waiting.clear();
        }
        events.forEach(event -> clients.forEach(client -> send(client, event)));
    }

    private void heartbeat() {
        clients.forEach(client -> {
            try {
                client.sendComment("still here");
            } catch (RuntimeException gone) {
                clients.remove(client);
            }
        });
    }

    private void send(SseClient client, Event event) {
        try {
            client.sendEvent(event.name(), event.data());
        } catch (RuntimeException gone) {
            // A phone that went out of reach; it comes back by itself and fetches everything anew.
            clients.remove(client);
        }
    }

    int connected() {
        return clients.size();
    }

    private record Event(String name, String data) {}

    @Override
    public void close() {
        sender.shutdownNow();
        clients.forEach(SseClient::close);
        clients.clear();
    }
}
