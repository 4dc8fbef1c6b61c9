package org.duskline.web.deliver;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What is sent at once through one channel: one step of one happening, or several happenings of the same minutes.
 *
 * @param id its number; the same at every try
 * @param channel the channel's number
 * @param made when it was put together
 * @param next when to try next
 * @param tries how often it was tried
 * @param state how far it has come
 * @param words what the other side said last
 * @param done when it was sent or given up
 * @param alerts what it tells, in order
 * @param earlier numbers of the messages that it follows, the first first
 */
public record Parcel(
        long id,
        long channel,
        Instant made,
        Instant next,
        int tries,
        State state,
        String words,
        Optional<Instant> done,
        List<Alert> alerts,
        List<Long> earlier) {
    public Parcel {
        alerts = List.copyOf(alerts);
        earlier = List.copyOf(earlier);
    }

    /** One line for all that is told. */
    public String title() {
        return alerts.size() == 1 ? alerts.get(0).title() : alerts.size() + " happenings: " + traps();
    }

    private String traps() {
        return String.join(
                ", ",
                alerts.stream()
                        .map(alert -> alert.trap().orElse(alert.title()))
                        .distinct()
                        .toList());
    }

    /** All that is told, the happenings parted by a line. */
    public String text() {
        return String.join(
                "\n\n----------\n\n", alerts.stream().map(Alert::words).toList());
    }
}
