package org.duskline.collector.intake;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.duskline.collector.wire.Message;

/** A sink that remembers what it was given, batch by batch. */
final class Notebook implements MessageSink {
    private final List<List<Message>> batches = new CopyOnWriteArrayList<>();

    @Override
    public void take(List<Message> batch) {
        batches.add(List.copyOf(batch));
    }

    List<Message> messages() {
        List<Message> all = new ArrayList<>();
        batches.forEach(all::addAll);
        return all;
    }

    List<String> texts() {
        return messages().stream()
                .map(message -> new String(message.payload(), StandardCharsets.UTF_8))
                .toList();
    }

    int batches() {
        return batches.size();
    }
}
