package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.finding.Kind;
import org.duskline.web.deliver.Channel;
import org.duskline.web.deliver.Means;
import org.duskline.web.deliver.Person;

/**
 * The page of one person: when and how they are told.
 *
 * @param person who
 * @param access how they come in
 * @param code a one-time code to be handed over, shown this once; empty otherwise
 * @param channels their channels
 * @param test what a test just did, if one was made
 * @param messages what was sent to them last, newest first
 * @param zones the zones to choose from
 * @param complaint what was wrong with the last try; may be empty
 * @param now the instant the page was made
 */
public record PersonView(
        Person person,
        Access access,
        String code,
        List<Channel> channels,
        Optional<Test> test,
        List<MessageRow> messages,
        List<String> zones,
        String complaint,
        Instant now) {
    public PersonView {
        channels = List.copyOf(channels);
        messages = List.copyOf(messages);
        zones = List.copyOf(zones);
    }

    /** How somebody comes in. */
    public enum Access {
        /** Signs in with a password of their own. */
        ACCOUNT,
        /** Has none; a one-time code can be made. */
        NONE,
        /** Nobody has one: the house is open, or the owner is still to come. */
        NOBODY
    }

    /** What really came of a test. */
    public record Test(long channel, boolean delivered, String words) {}

    public String address() {
        return "/people/" + person.id();
    }

    public Optional<Test> testOf(Channel channel) {
        return test.filter(one -> one.channel() == channel.id());
    }

    public String quietFrom() {
        return person.quiet().map(hours -> hours.from().toString()).orElse("");
    }

    public String quietUntil() {
        return person.quiet().map(hours -> hours.until().toString()).orElse("");
    }

    public boolean remindedAt(int minutes) {
        return person.reminder().filter(Duration.ofMinutes(minutes)::equals).isPresent();
    }

    /** The lead times that can be chosen, with the person's own among them. */
    public List<Integer> leads() {
        return PersonEntry.LEADS;
    }

    public static String lead(int minutes) {
        return Words.length(Duration.ofMinutes(minutes)) + " before";
    }

    public static String means(Means means) {
        return switch (means) {
            case EMAIL -> "E-mail";
            case WEBHOOK -> "Webhook";
            case MQTT -> "Broker (MQTT)";
            case LOG -> "Log of the program";
        };
    }

    public static String field(Means means) {
        return means.name().toLowerCase(Locale.ROOT);
    }

    /** "everything", or how many kinds. */
    public static String wanted(Channel channel) {
        return channel.kinds().size() == Kind.values().length
                ? "everything"
                : channel.kinds().size() + " of " + Kind.values().length + " kinds";
    }
}
