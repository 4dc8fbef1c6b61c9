package org.duskline.web.app;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.duskline.collector.intake.MessageSink;
import org.duskline.collector.wire.Message;

/** Stores messages, and remembers which nodes spoke until the watch asks. */
final class Hearing implements MessageSink {
    private final MessageSink store;
    private final int rootLength;
    private final Set<String> spoke = new HashSet<>();

    Hearing(MessageSink store, String root) {
        this.store = store;
        this.rootLength = root.length() + 1;
    }

    @Override
    public void take(List<Message> batch) {
        store.take(batch);
        synchronized (spoke) {
            batch.forEach(message -> spoke.add(node(message.topic())));
            spoke.notifyAll();
        }
    }

    /** Waits a while for somebody to speak; returns who did since the last time. */
    Set<String> await(long millis) throws InterruptedException {
        synchronized (spoke) {
            if (spoke.isEmpty()) {
                spoke.wait(millis);
            }
            Set<String> now = Set.copyOf(spoke);
            spoke.clear();
            return now;
        }
    }

    private String node(String topic) {
        int end = topic.indexOf('/', rootLength);
        return end > rootLength ? topic.substring(rootLength, end) : topic;
    }
}
