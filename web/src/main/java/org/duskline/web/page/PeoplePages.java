package org.duskline.web.page;

import static org.duskline.web.page.PersonEntry.text;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.duskline.web.deliver.AddressBook;
import org.duskline.web.deliver.Channel;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.deliver.Person;
import org.duskline.web.door.Account;
import org.duskline.web.door.Door;
import org.duskline.web.door.DoorRefusal;
import org.duskline.web.page.board.Watchboard;

/** Who is told and who may come in, and what became of every message. One person's own page is {@link PersonPages}. */
public final class PeoplePages implements Part {
    private static final int MOST_MESSAGES = 200;

    private final Watchboard board;
    private final Deliveries deliveries;
    private final Door door;
    private final InstantSource clock;
    private final PersonPages person;

    /**
     * @param board tells the zone that most of the line hangs in
     * @param clock the present
     */
    public PeoplePages(Watchboard board, Deliveries deliveries, Door door, InstantSource clock) {
        this.board = board;
        this.deliveries = deliveries;
        this.door = door;
        this.clock = clock;
        this.person = new PersonPages(deliveries, door, clock);
    }

    @Override
    public void register(RoutesConfig routes) {
        routes.get("/people", context -> show(context, 200, ""));
        routes.post("/people", this::add);
        routes.get("/messages", this::messages);
        routes.get("/api/people", context -> context.json(PeopleShapes.people(deliveries.book())));
        routes.get(
                "/api/messages",
                context -> context.json(PeopleShapes.messages(MessageRow.latest(deliveries, MOST_MESSAGES))));
        person.register(routes);
    }

    private void add(Context context) {
        try {
            String name = text(context, "name");
            ZoneId zone = PersonEntry.zone(text(context, "zone"));
            Person added = deliveries.book().add(Door.tidyName(name), zone, Optional.empty());
            if (context.formParam("invite") != null && door.hasOwner()) {
                person.showCode(context, added);
            } else {
                context.redirect("/people/" + added.id(), HttpStatus.SEE_OTHER);
            }
        } catch (BadRequest | DoorRefusal | IllegalArgumentException wrong) {
            show(context, 400, wrong.getMessage());
        }
    }

    private void show(Context context, int status, String complaint) {
        AddressBook book = deliveries.book();
        List<Channel> channels = book.channels();
        List<Account> accounts = door.accounts();
        List<Person> people = book.people();
        List<PeopleView.Row> rows = people.stream()
                .map(one -> new PeopleView.Row(
                        one,
                        channels.stream()
                                .filter(channel -> channel.person().id() == one.id())
                                .toList(),
                        accounts.stream().anyMatch(account -> account.name().equalsIgnoreCase(one.name()))))
                .toList();
        List<String> untold = accounts.stream()
                .map(Account::name)
                .filter(name -> people.stream().noneMatch(one -> one.name().equalsIgnoreCase(name)))
                .toList();
        PeopleView view = new PeopleView(
                rows, untold, zones(), lineZone().getId(), text(context, "name"), complaint, clock.instant());
        render(context, status, "People", "people", view);
    }

    private void messages(Context context) {
        MessagesView view = new MessagesView(MessageRow.latest(deliveries, MOST_MESSAGES), lineZone(), clock.instant());
        render(context, 200, "Messages", "messages", view);
    }

    private void render(Context context, int status, String title, String template, Object view) {
        Instant now = clock.instant();
        Shell shell = new Shell(title, "more", now, Optional.empty());
        context.status(status)
                .header("Cache-Control", "no-cache")
                .render(template + ".jte", Map.of("shell", shell, "view", view));
    }

    private ZoneId lineZone() {
        return board.line().traps().stream()
                .findFirst()
                .map(trap -> trap.trap().zone())
                .orElse(ZoneOffset.UTC);
    }

    /** Names of places alone; what is left are offsets and outdated names. */
    static List<String> zones() {
        return ZoneId.getAvailableZoneIds().stream()
                .filter(name -> name.matches(
                        "(Africa|America|Antarctica|Asia|Atlantic|Australia|Europe|Indian|Pacific)/.*" + "|UTC"))
                .collect(Collectors.toCollection(TreeSet::new))
                .stream()
                .toList();
    }
}
