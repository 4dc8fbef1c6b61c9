package org.duskline.web.deliver;

import java.time.Instant;

/**
 * An alert that waits to be put into a message: for others of the same minutes, for the end of quiet hours, or for an
 * earlier message of its channel.
 *
 * @param channel the channel's number
 * @param title its one line
 * @param due when it may go out
 */
public record Pending(long channel, String title, Instant due) {}
