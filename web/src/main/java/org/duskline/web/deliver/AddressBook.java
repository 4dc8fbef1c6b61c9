package org.duskline.web.deliver;

import java.net.URI;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.duskline.analyzer.finding.Kind;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/** Who is told, and how. Safe for many threads. */
public final class AddressBook {
    /** What a person wants to hear who has not said otherwise: all but what only explains a reading. */
    public static final Set<Kind> USUAL_KINDS = Set.of(
            Kind.SCOUTING,
            Kind.MOVE_IN,
            Kind.DEPARTURE,
            Kind.ROBBING,
            Kind.UNHEARD,
            Kind.FAULTY,
            Kind.BATTERY_LOW,
            Kind.LEAKING,
            Kind.OVERHEATING,
            Kind.GONE);

    private static final String CHANNELS = "SELECT channel.id AS id, means, address, secret, kinds, failing_since_ms,"
            + " person.id AS person_id, name, zone, quiet_from, quiet_until, reminder_minutes"
            + " FROM channel JOIN person ON person.id = channel.person";

    private final Jdbi jdbi;

    AddressBook(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** Adds a person, or brings one back who was removed. */
    public Person add(String name, ZoneId zone, Optional<QuietHours> quiet) {
        if (name.isBlank()) {
            throw new IllegalArgumentException("A person needs a name.");
        }
        long id = jdbi.withHandle(handle -> handle.createQuery(
                        "INSERT INTO person (name, zone, quiet_from, quiet_until)"
                                + " VALUES (:name, :zone, :from, :until) ON CONFLICT (name) DO UPDATE SET removed = 0,"
                                + " zone = excluded.zone, quiet_from = excluded.quiet_from, quiet_until ="
                                + " excluded.quiet_until WHERE removed = 1 RETURNING id")
                .bind("name", name)
                .bind("zone", zone.getId())
                .bind("from", quiet.map(hours -> hours.from().toString()).orElse(null))
                .bind("until", quiet.map(hours -> hours.until().toString()).orElse(null))
                .mapTo(Long.class)
                .findOne()
                .orElseThrow(() -> new IllegalArgumentException(name + " is among the people already.")));
        return person(id).orElseThrow();
    }

    /** Changes the zone of a person's clock. */
    public void clock(Person person, ZoneId zone) {
        jdbi.useHandle(handle -> handle.execute("UPDATE person SET zone = ? WHERE id = ?", zone.getId(), person.id()));
    }

    /** Changes a person's quiet hours; what already waits keeps its hour. */
    public void quiet(Person person, Optional<QuietHours> quiet) {
        jdbi.useHandle(handle -> handle.createUpdate(
                        "UPDATE person SET quiet_from = :from, quiet_until = :until WHERE id = :id")
                .bind("from", quiet.map(hours -> hours.from().toString()).orElse(null))
                .bind("until", quiet.map(hours -> hours.until().toString()).orElse(null))
                .bind("id", person.id())
                .execute());
    }

    /** Changes how long before a trap can be closed a person is reminded; empty for never. */
    public void reminder(Person person, Optional<Duration> lead) {
        jdbi.useHandle(handle -> handle.createUpdate("UPDATE person SET reminder_minutes = :minutes WHERE id = :id")
                .bind("minutes", lead.map(Duration::toMinutes).orElse(null))
                .bind("id", person.id())
                .execute());
    }

    /** Takes a person and all their channels out of use; what they were told stays on record. */
    public void remove(Person person) {
        jdbi.useTransaction(handle -> {
            handle.execute("UPDATE channel SET removed = 1 WHERE person = ?", person.id());
            handle.execute("UPDATE person SET removed = 1 WHERE id = ?", person.id());
        });
    }

    /** All people, by name. */
    public List<Person> people() {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "SELECT id AS person_id, name, zone, quiet_from, quiet_until, reminder_minutes FROM person"
                                + " WHERE removed = 0 ORDER BY name")
                .map(AddressBook::person)
                .list());
    }

    /** One person. */
    public Optional<Person> person(long id) {
        return people().stream().filter(person -> person.id() == id).findFirst();
    }

    /**
     * Adds a channel.
     *
     * @param secret signs a webhook's messages; empty for the others
     * @throws IllegalArgumentException in the keeper's words, if the address cannot be one
     */
    public Channel add(Person person, Means means, String address, String secret, Set<Kind> kinds) {
        check(means, address, secret);
        long id = jdbi.withHandle(handle -> handle.createQuery("INSERT INTO channel (person, means, address, secret,"
                        + " kinds) VALUES (:person, :means, :address, :secret, :kinds) RETURNING id")
                .bind("person", person.id())
                .bind("means", means.name())
                .bind("address", address)
                .bind("secret", secret)
                .bind("kinds", names(kinds))
                .mapTo(Long.class)
                .one());
        return new Channel(id, person, means, address, secret, kinds, Optional.empty());
    }

    private static void check(Means means, String address, String secret) {
        if (means == Means.EMAIL && !address.matches("[^@\\s]+@[^@\\s]+")) {
            throw new IllegalArgumentException("\"" + address + "\" is no mail address such as keeper@line.example.");
        }
        if (means == Means.MQTT && !address.matches("[A-Za-z0-9_-]{1,32}")) {
            throw new IllegalArgumentException(
                    "The last level of the topic is one word of letters, digits, - and _," + " such as ida.");
        }
        if (means != Means.WEBHOOK) {
            return;
        }
        URI uri = address(address);
        String scheme = String.valueOf(uri.getScheme()).toLowerCase(Locale.ROOT);
        if (!scheme.matches("https?") || uri.getHost() == null) {
            throw new IllegalArgumentException("A webhook's address begins with https:// and names a host.");
        }
        if (secret.isBlank()) {
            throw new IllegalArgumentException("A webhook needs a secret, by which its receiver knows our messages.");
        }
    }

    private static URI address(String text) {
        try {
            return URI.create(text);
        } catch (IllegalArgumentException unreadable) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" cannot be read as an address of a webhook.", unreadable);
        }
    }

    /** Changes which kinds are wanted through a channel. */
    public void wanted(Channel channel, Set<Kind> kinds) {
        jdbi.useHandle(handle -> handle.createUpdate("UPDATE channel SET kinds = :kinds WHERE id = :id")
                .bind("kinds", names(kinds))
                .bind("id", channel.id())
                .execute());
    }

    private static String names(Set<Kind> kinds) {
        return kinds.stream().map(Kind::name).sorted().collect(Collectors.joining(" "));
    }

    /** Takes a channel out of use; what was told through it stays on record, what still waits is not sent. */
    public void remove(long channel) {
        jdbi.useHandle(handle -> handle.createUpdate("UPDATE channel SET removed = 1 WHERE id = :id")
                .bind("id", channel)
                .execute());
    }

    /** All channels in use, in the order in which they were added. */
    public List<Channel> channels() {
        return jdbi.withHandle(AddressBook::channels);
    }

    /** One channel in use. */
    public Optional<Channel> channel(long id) {
        return channels().stream().filter(channel -> channel.id() == id).findFirst();
    }

    /** All channels, also those taken out of use: what was told through them is still on record. */
    public List<Channel> everyChannel() {
        return jdbi.withHandle(handle -> handle.createQuery(CHANNELS + " ORDER BY channel.id")
                .map(AddressBook::channel)
                .list());
    }

    static List<Channel> channels(Handle handle) {
        return handle.createQuery(CHANNELS + " WHERE channel.removed = 0 ORDER BY channel.id")
                .map(AddressBook::channel)
                .list();
    }

    private static Channel channel(ResultSet row, StatementContext context) throws SQLException {
        long failing = row.getLong("failing_since_ms");
        boolean fails = !row.wasNull();
        Set<Kind> kinds = Arrays.stream(row.getString("kinds").split(" "))
                .filter(name -> !name.isEmpty())
                .map(Kind::valueOf)
                .collect(Collectors.toSet());
        return new Channel(
                row.getLong("id"),
                person(row, context),
                Means.valueOf(row.getString("means")),
                row.getString("address"),
                row.getString("secret"),
                kinds,
                fails ? Optional.of(Instant.ofEpochMilli(failing)) : Optional.empty());
    }

    private static Person person(ResultSet row, StatementContext context) throws SQLException {
        String from = row.getString("quiet_from");
        Optional<QuietHours> quiet = from == null
                ? Optional.empty()
                : Optional.of(new QuietHours(LocalTime.parse(from), LocalTime.parse(row.getString("quiet_until"))));
        long minutes = row.getLong("reminder_minutes");
        Optional<Duration> reminder = row.wasNull() ? Optional.empty() : Optional.of(Duration.ofMinutes(minutes));
        return new Person(
                row.getLong("person_id"), row.getString("name"), ZoneId.of(row.getString("zone")), quiet, reminder);
    }
}
