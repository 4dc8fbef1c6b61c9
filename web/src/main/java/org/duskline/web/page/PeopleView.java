package org.duskline.web.page;

import java.time.Instant;
import java.util.List;
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

        public boolean failing() {
            return channels.stream().anyMatch(channel -> channel.failingSince().isPresent());
        }

        /** How they are reached, in a line. */
        public String reached() {
            return channels.isEmpty()
                    ? "not told anything yet"
                    : String.join(", ", channels.stream().map(Channel::named).toList());
        }
    }
}
