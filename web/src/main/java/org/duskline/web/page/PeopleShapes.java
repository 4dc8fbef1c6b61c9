package org.duskline.web.page;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.duskline.analyzer.finding.Kind;
import org.duskline.web.deliver.AddressBook;
import org.duskline.web.deliver.Channel;
import org.duskline.web.deliver.Person;

/** The shapes in which the API tells people, their channels and their messages. No secret is among them. */
final class PeopleShapes {
    private PeopleShapes() {}

    static List<Map<String, Object>> people(AddressBook book) {
        List<Channel> channels = book.channels();
        return book.people().stream().map(person -> person(person, channels)).toList();
    }

    private static Map<String, Object> person(Person person, List<Channel> channels) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("number", person.id());
        shape.put("name", person.name());
        shape.put("zone", person.zone().getId());
        person.quiet().ifPresent(quiet -> {
            shape.put("quietFrom", quiet.from().toString());
            shape.put("quietUntil", quiet.until().toString());
        });
        person.reminder().ifPresent(lead -> shape.put("reminderMinutes", lead.toMinutes()));
        shape.put(
                "channels",
                channels.stream()
                        .filter(channel -> channel.person().id() == person.id())
                        .map(PeopleShapes::channel)
                        .toList());
        return shape;
    }

    private static Map<String, Object> channel(Channel channel) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("number", channel.id());
        shape.put("means", PersonView.field(channel.means()));
        shape.put("reaches", channel.named());
        shape.put("kinds", channel.kinds().stream().map(Kind::wireName).sorted().toList());
        channel.failingSince().ifPresent(since -> shape.put("failingSince", since.toString()));
        return shape;
    }

    static List<Map<String, Object>> messages(List<MessageRow> rows) {
        return rows.stream().map(PeopleShapes::message).toList();
    }

    private static Map<String, Object> message(MessageRow row) {
        Map<String, Object> shape = new LinkedHashMap<>();
        shape.put("title", row.title());
        shape.put("person", row.channel().person().name());
        shape.put("reaches", row.channel().named());
        shape.put("state", row.stateMark());
        shape.put("at", row.at().toString());
        shape.put("tries", row.tries());
        shape.put("words", row.words());
        return shape;
    }
}
