package org.duskline.web.page;

import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import org.duskline.web.deliver.Channel;
import org.duskline.web.deliver.Person;

/**
 * The page of everybody who is told or may sign in.
 *
 * @param people everybody who is told
 * @param untold names of accounts whose holders are not told anything
 * @param zones the zones to choose from
 * @param zone the zone that most likely is the new one's
 * @param name what was given as the new one's name
 * @param complaint what was wrong with the last try; may be empty
 * @param now the instant the page was made
 */
public record PeopleView(
        List<Row> people,
        List<String> untold,
        List<String> zones,
        String zone,
        String name,
        String complaint,
        Instant now) {
    public PeopleView {
        people = List.copyOf(people);
        untold = List.copyOf(untold);
        zones = List.copyOf(zones);
    }

    /** Somebody with what reaches them. */
    public record Row(Person person, List<Channel> channels, boolean account) {
        public Row {
            channels = List.copyOf(channels);
        }

        /** The ways by which nothing gets through, in a line; empty if all work. */
        public String failing() {
            return named(channel -> channel.failingSince().isPresent());
        }

        /** The ways that work, in a line. */
        public String reached() {
            return channels.isEmpty()
                    ? "not told anything yet"
                    : named(channel -> channel.failingSince().isEmpty());
        }

        private String named(Predicate<Channel> which) {
            return String.join(
                    ", ", channels.stream().filter(which).map(Channel::named).toList());
        }
    }
}
