package org.duskline.web.page;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;

/**
 * The page of what became of every message.
 *
 * @param messages what waits, then the newest first
 * @param zone the zone that hours are told in
 * @param now the instant the page was made
 */
public record MessagesView(List<MessageRow> messages, ZoneId zone, Instant now) {
    public MessagesView {
        messages = List.copyOf(messages);
    }
}
