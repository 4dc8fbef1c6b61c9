package org.duskline.web.page;

import static org.duskline.web.page.PersonEntry.text;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.duskline.analyzer.finding.Kind;
import org.duskline.web.deliver.AddressBook;
import org.duskline.web.deliver.Channel;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.deliver.Means;
import org.duskline.web.deliver.Outcome;
import org.duskline.web.deliver.Person;
import org.duskline.web.door.Door;
import org.duskline.web.door.DoorRefusal;
import org.duskline.web.page.PersonView.Access;

/** One person: hours, reminder, channels with the kinds wanted there, a test of each, and what was sent lately. */
final class PersonPages {
    private static final int MOST_SEARCHED = 400;
    private static final int MOST_SHOWN = 12;

    private final Deliveries deliveries;
    private final AddressBook book;
    private final Door door;
    private final InstantSource clock;

    PersonPages(Deliveries deliveries, Door door, InstantSource clock) {
        this.deliveries = deliveries;
        this.book = deliveries.book();
        this.door = door;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.get("/people/{person}", context -> show(context, person(context), Shown.PLAIN));
        routes.post("/people/{person}", context -> change(context, this::hours));
        routes.post("/people/{person}/channels", context -> change(context, this::addChannel));
        routes.post("/people/{person}/channels/{channel}", context -> change(context, this::kinds));
        routes.post("/people/{person}/channels/{channel}/remove", context -> change(context, this::dropChannel));
        routes.post("/people/{person}/channels/{channel}/test", this::test);
        routes.post("/people/{person}/code", context -> showCode(context, person(context)));
        routes.post("/people/{person}/remove", this::remove);
    }

    /** What a page shows beside the person: a code, what a test did, or a complaint. */
    private record Shown(int status, String code, Optional<PersonView.Test> test, String complaint) {
        static final Shown PLAIN = new Shown(200, "", Optional.empty(), "");
    }

    @FunctionalInterface
    private interface Change {
        void make(Context context, Person person);
    }

    private void change(Context context, Change change) {
        Person person = person(context);
        try {
            change.make(context, person);
            context.redirect("/people/" + person.id(), HttpStatus.SEE_OTHER);
        } catch (BadRequest | IllegalArgumentException wrong) {
            show(context, person, new Shown(400, "", Optional.empty(), wrong.getMessage()));
        }
    }

    private void hours(Context context, Person person) {
        var zone = PersonEntry.zone(text(context, "zone"));
        var quiet = PersonEntry.quiet(text(context, "quietFrom"), text(context, "quietUntil"));
        var lead = PersonEntry.lead(text(context, "reminder"));
        book.clock(person, zone);
        book.quiet(person, quiet);
        book.reminder(person, lead);
    }

    private void addChannel(Context context, Person person) {
        Means means = PersonEntry.means(text(context, "means"));
        String address = text(context, "address");
        String secret = means == Means.WEBHOOK ? text(context, "secret") : "";
        book.add(person, means, means == Means.LOG ? "" : address, secret, AddressBook.USUAL_KINDS);
    }

    private void kinds(Context context, Person person) {
        Set<Kind> kinds = PersonEntry.kinds(context.formParams("kind"));
        book.wanted(channel(context, person), kinds);
    }

    private void dropChannel(Context context, Person person) {
        book.remove(channel(context, person).id());
    }

    private void test(Context context) {
        Person person = person(context);
        Channel channel = channel(context, person);
        Outcome outcome = deliveries.test(channel);
        PersonView.Test test = new PersonView.Test(channel.id(), outcome instanceof Outcome.Delivered, outcome.words());
        show(context, person, new Shown(200, "", Optional.of(test), ""));
    }

    /** The code is shown this once and kept nowhere. */
    void showCode(Context context, Person person) {
        try {
            show(context, person, new Shown(200, door.invite(person.name()), Optional.empty(), ""));
        } catch (DoorRefusal refusal) {
            show(context, person, new Shown(400, "", Optional.empty(), refusal.getMessage()));
        }
    }

    private void remove(Context context) {
        book.remove(person(context));
        context.redirect("/people", HttpStatus.SEE_OTHER);
    }

    private Person person(Context context) {
        return number(context, "person")
                .flatMap(book::person)
                .orElseThrow(() -> new NotHere("Nobody has this number among the people."));
    }

    private Channel channel(Context context, Person person) {
        return number(context, "channel")
                .flatMap(book::channel)
                .filter(channel -> channel.person().id() == person.id())
                .orElseThrow(() -> new NotHere(person.name() + " has no such channel."));
    }

    private static Optional<Long> number(Context context, String name) {
        String text = context.pathParam(name);
        return text.matches("\\d{1,15}") ? Optional.of(Long.parseLong(text)) : Optional.empty();
    }

    private void show(Context context, Person person, Shown shown) {
        List<MessageRow> messages = MessageRow.latest(deliveries, MOST_SEARCHED).stream()
                .filter(row -> row.channel().person().id() == person.id())
                .limit(MOST_SHOWN)
                .toList();
        PersonView view = new PersonView(
                person,
                access(person),
                shown.code(),
                book.channels().stream()
                        .filter(channel -> channel.person().id() == person.id())
                        .toList(),
                shown.test(),
                messages,
                PeoplePages.zones(),
                shown.complaint(),
                clock.instant());
        Shell shell = new Shell(person.name(), "more", view.now(), Optional.empty());
        context.status(shown.status())
                .header("Cache-Control", "no-store")
                .render("person.jte", Map.of("shell", shell, "view", view));
    }

    private Access access(Person person) {
        boolean account = door.accounts().stream().anyMatch(one -> one.name().equalsIgnoreCase(person.name()));
        if (account) {
            return Access.ACCOUNT;
        }
        return door.hasOwner() ? Access.NONE : Access.NOBODY;
    }
}
