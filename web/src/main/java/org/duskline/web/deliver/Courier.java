package org.duskline.web.deliver;

import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.duskline.analyzer.finding.Condition;
import org.duskline.collector.intake.BrokerPublisher;
import org.duskline.collector.intake.BrokerUnreachable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Carries what waits in the book to the broker, oldest first, and leaves the traps' conditions there. One thread. */
public final class Courier {
    private static final int AT_ONCE = 100;
    private static final Logger log = LoggerFactory.getLogger(Courier.class);

    private final AlertBook book;
    private final BrokerPublisher publisher;
    private final InstantSource clock;
    private final Map<String, Condition> left = new HashMap<>();
    private boolean away;

    public Courier(AlertBook book, BrokerPublisher publisher, InstantSource clock) {
        this.book = book;
        this.publisher = publisher;
        this.clock = clock;
    }

    /**
     * Goes once. What the broker doesn't confirm waits for the next time.
     *
     * @param conditions of all traps, as they are now
     */
    public void go(Map<String, Condition> conditions) {
        try {
            alerts();
            conditions(conditions);
            away = false;
        } catch (BrokerUnreachable e) {
            if (!away) {
                log.warn("Alerts wait for the broker: {}", e.getMessage());
            }
            away = true;
        }
    }

    private void alerts() throws BrokerUnreachable {
        List<AlertBook.Waiting> waiting = book.waiting(AT_ONCE);
        while (!waiting.isEmpty()) {
            for (AlertBook.Waiting alert : waiting) {
                publisher.alert(alert.trap(), alert.body().getBytes(StandardCharsets.UTF_8));
                book.confirmed(alert.id(), clock.instant());
            }
            waiting = book.waiting(AT_ONCE);
        }
    }

    private void conditions(Map<String, Condition> conditions) throws BrokerUnreachable {
        for (Map.Entry<String, Condition> trap : conditions.entrySet()) {
            if (left.get(trap.getKey()) != trap.getValue()) {
                publisher.condition(trap.getKey(), trap.getValue().wireName().getBytes(StandardCharsets.UTF_8));
                left.put(trap.getKey(), trap.getValue());
            }
        }
    }
}
