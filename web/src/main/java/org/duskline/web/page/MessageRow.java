package org.duskline.web.page;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.duskline.web.deliver.Channel;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.deliver.Parcel;
import org.duskline.web.deliver.Pending;
import org.duskline.web.deliver.State;

/**
 * What became of one message.
 *
 * @param title what it tells, in a line
 * @param channel whom it goes to, and how
 * @param state how far it has come
 * @param at when it was sent or given up, otherwise when it is tried next
 * @param tries how often it was tried
 * @param words what the other side said last, or why it waits; may be empty
 */
public record MessageRow(String title, Channel channel, State state, Instant at, int tries, String words) {
    /** The newest messages of everybody: first what fails, then what waits, then what is done, newest first. */
    static List<MessageRow> latest(Deliveries deliveries, int most) {
        Map<Long, Channel> channels =
                deliveries.book().everyChannel().stream().collect(Collectors.toMap(Channel::id, Function.identity()));
        Map<Boolean, List<Parcel>> made = deliveries.latest(most).stream()
                .filter(parcel -> channels.containsKey(parcel.channel()))
                .collect(Collectors.partitioningBy(parcel -> parcel.state() == State.FAILED));
        Set<Long> blocked = made.get(true).stream().map(Parcel::channel).collect(Collectors.toSet());
        Stream<MessageRow> waiting = deliveries.pending().stream()
                .filter(pending -> channels.containsKey(pending.channel()))
                .sorted(Comparator.comparing(Pending::due))
                .map(pending -> waiting(pending, channels.get(pending.channel()), blocked.contains(pending.channel())));
        return Stream.of(rows(made.get(true), channels), waiting, rows(made.get(false), channels))
                .flatMap(Function.identity())
                .limit(most)
                .toList();
    }

    private static Stream<MessageRow> rows(List<Parcel> parcels, Map<Long, Channel> channels) {
        return parcels.stream().map(parcel -> of(parcel, channels.get(parcel.channel())));
    }

    private static MessageRow waiting(Pending pending, Channel channel, boolean blocked) {
        String why = blocked ? "What failed before it on this way goes first." : "";
        return new MessageRow(pending.title(), channel, State.WAITING, pending.due(), 0, why);
    }

    private static MessageRow of(Parcel parcel, Channel channel) {
        Optional<Instant> done = parcel.done();
        return new MessageRow(
                parcel.title(), channel, parcel.state(), done.orElse(parcel.next()), parcel.tries(), parcel.words());
    }

    /** "sent", "waits", "failed, next try", "given up"; the instant stands beside it. */
    public String stateWords() {
        return switch (state) {
            case WAITING -> "waits";
            case SENT -> "sent";
            case FAILED -> "failed, next try";
            case GIVEN_UP -> "given up";
        };
    }

    /** The state as a mark for the style sheet. */
    public String stateMark() {
        return state.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
