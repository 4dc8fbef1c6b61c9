package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskline.web.page.PlainBrowser.leadsTo;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpServer;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.duskline.web.deliver.AddressBook;
import org.duskline.web.deliver.Channel;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.deliver.Means;
import org.duskline.web.deliver.Person;
import org.duskline.web.deliver.QuietHours;
import org.duskline.web.door.Door;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PeoplePagesTest {
    private static final String PASSWORD = "elder hedge at seven";
    private static final String SECRET = "wren under the eaves";

    @TempDir
    Path folder;

    private Instant now = InventedLine.NOW;
    private Store store;
    private Deliveries deliveries;
    private Door door;
    private Pages pages;
    private PlainBrowser ida;
    private HttpServer webhook;
    private volatile int status = 200;

    @BeforeEach
    void open() throws Exception {
        store = Store.open(folder.resolve("duskline.db"));
        deliveries = Deliveries.open(
                store,
                new Deliveries.Equipment(Optional.empty(), Optional.empty(), Optional.empty()),
                () -> now,
                new Random(1));
        door = Door.open(store, () -> now);
        door.makeOwner("Ida", PASSWORD);
        InventedLine line = new InventedLine(InventedLine.Mood.BUSY);
        Part people = new PeoplePages(line, deliveries, door, () -> now);
        pages = new Pages(line, new Entrance(door, false, false), () -> now, List.of(people));
        ida = new PlainBrowser(pages.start("127.0.0.1", 0));
        ida.fill("/sign-in", "/sign-in", Map.of("name", "Ida", "password", PASSWORD));
        webhook = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        webhook.createContext("/", exchange -> {
            byte[] words = "the cellar is flooded".getBytes();
            exchange.sendResponseHeaders(status, words.length);
            exchange.getResponseBody().write(words);
            exchange.close();
        });
        webhook.start();
    }

    @AfterEach
    void close() {
        webhook.stop(0);
        pages.stop();
        deliveries.close();
        store.close();
    }

    private AddressBook book() {
        return deliveries.book();
    }

    private Person oda() {
        return book().people().get(0);
    }

    private String odasPage() throws Exception {
        return leadsTo(ida.fill("/people", "/people", Map.of("name", " Oda ", "zone", "Europe/Vienna")));
    }

    private String url() {
        return "http://127.0.0.1:" + webhook.getAddress().getPort() + "/hook/of-" + "oda";
    }

    private Channel withWebhook(String page) throws Exception {
        ida.fill(page, page + "/channels", Map.of("means", "webhook", "address", url(), "secret", SECRET));
        return book().channels().get(0);
    }

    @Test
    void somebody_added_with_a_code_makes_their_account_and_is_told_nothing_until_a_way_is_added() throws Exception {
        HttpResponse<String> added =
                ida.fill("/people", "/people", Map.of("name", "Oda", "zone", "Europe/Vienna", "invite", "yes"));
        Matcher code = Pattern.compile("<p class=\"one-time\">([A-Z0-9-]+)</p>").matcher(added.body());
        assertThat(code.find()).isTrue();
        assertThat(added.headers().firstValue("Cache-Control")).contains("no-store");
        assertThat(ida.get("/people/" + oda().id()).body())
                .doesNotContain(code.group(1))
                .contains("None yet");
        PlainBrowser phone =
                new PlainBrowser(Integer.parseInt(added.uri().getAuthority().split(":")[1]));
        assertThat(leadsTo(phone.fill("/join", "/join", Map.of("code", code.group(1), "password", PASSWORD))))
                .isEqualTo("/");
        assertThat(phone.get("/more").body()).contains("signed in as Oda");
        assertThat(ida.get("/people").body()).contains("not told anything yet; signs in");
    }

    @Test
    void a_name_that_is_taken_a_zone_that_is_none_and_half_of_quiet_hours_are_refused_in_words() throws Exception {
        String page = odasPage();
        HttpResponse<String> again = ida.fill("/people", "/people", Map.of("name", "Oda", "zone", "Europe/Vienna"));
        assertThat(again.statusCode()).isEqualTo(400);
        assertThat(again.body()).contains("Oda is among the people already");
        assertThat(ida.fill(page, page, Map.of("zone", "Europe/Nowhere", "reminder", "60"))
                        .body())
                .contains("is no time zone");
        assertThat(ida.fill(page, page, Map.of("zone", "Europe/Vienna", "quietFrom", "22:00", "reminder", "60"))
                        .body())
                .contains("need a beginning and an end");
        assertThat(oda().quiet()).isEmpty();
    }

    @Test
    void hours_reminder_and_kinds_are_the_persons_choice() throws Exception {
        String page = odasPage();
        Channel channel = withWebhook(page);
        ida.fill(
                page,
                page,
                Map.of("zone", "Europe/Lisbon", "quietFrom", "21:30", "quietUntil", "06:15", "reminder", "180"));
        assertThat(oda().zone().getId()).isEqualTo("Europe/Lisbon");
        assertThat(oda().quiet()).contains(new QuietHours(LocalTime.of(21, 30), LocalTime.of(6, 15)));
        assertThat(oda().reminder()).contains(Duration.ofHours(3));
        ida.fill(page, page, Map.of("zone", "Europe/Lisbon", "reminder", "never"));
        assertThat(oda().quiet()).isEmpty();
        assertThat(oda().reminder()).isEmpty();
        ida.fill(page, page + "/channels/" + channel.id(), Map.of("kind", "move-in"));
        assertThat(book().channels().get(0).kinds()).containsExactly(Kind.MOVE_IN);
        assertThat(ida.get(page).body()).contains("1 of 14 kinds");
    }

    @Test
    void a_test_reports_what_really_happened_in_the_receivers_words() throws Exception {
        String page = odasPage();
        String test = page + "/channels/" + withWebhook(page).id() + "/test";
        assertThat(ida.fill(page, test, Map.of()).body()).contains("The test went out");
        status = 500;
        assertThat(ida.fill(page, test, Map.of()).body()).contains("The test failed", "500: the cellar is flooded");
        webhook.stop(0);
        assertThat(ida.fill(page, test, Map.of()).body()).contains("The test failed");
        ida.fill(page, page + "/channels", Map.of("means", "email", "address", "oda@line.example"));
        String mail = page + "/channels/" + book().channels().get(1).id() + "/test";
        assertThat(ida.fill(page, mail, Map.of()).body())
                .contains("Enter the mail server or the broker in the settings");
    }

    @Test
    void a_webhooks_secret_and_path_are_never_shown_again() throws Exception {
        String page = odasPage();
        withWebhook(page);
        for (String path : List.of(page, "/people", "/messages", "/api/people", "/api/messages")) {
            assertThat(ida.get(path).body()).as(path).doesNotContain(SECRET).doesNotContain("of-oda");
        }
        assertThat(ida.get(page).body()).contains("127.0.0.1");
    }

    @Test
    void an_address_that_cannot_be_one_is_refused_with_an_example() throws Exception {
        String page = odasPage();
        HttpResponse<String> answer =
                ida.fill(page, page + "/channels", Map.of("means", "email", "address", "oda at home"));
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(answer.body()).contains("is no mail address such as keeper@line.example");
        assertThat(book().channels()).isEmpty();
    }

    @Test
    void what_fails_stands_first_and_what_waits_behind_it_says_so() throws Exception {
        withWebhook(odasPage());
        FindingLog findings = new FindingLog(store);
        findings.keep(List.of(InventedFindings.swarm()), 1, deliveries);
        now = now.plus(Duration.ofMinutes(3));
        status = 500;
        deliveries.round();
        findings.keep(List.of(InventedFindings.robbers()), 2, deliveries);
        assertThat(states()).containsExactly("failed", "waiting");
        assertThat(ida.get("/messages").body()).contains("What failed before it on this way goes first.");
    }

    @Test
    void every_message_shows_how_far_it_has_come_with_the_receivers_words() throws Exception {
        String page = odasPage();
        withWebhook(page);
        book().add(oda(), Means.LOG, "", "", AddressBook.USUAL_KINDS);
        new FindingLog(store).keep(List.of(InventedFindings.swarm()), 1, deliveries);
        assertThat(states()).containsExactlyInAnyOrder("waiting", "waiting");
        now = now.plus(Duration.ofMinutes(3));
        status = 500;
        deliveries.round();
        assertThat(states()).containsExactlyInAnyOrder("failed", "sent");
        assertThat(ida.get("/messages").body()).contains("failed, next try", "the cellar is flooded", "Alder Sluice");
        assertThat(ida.get(page).body()).contains("Nothing has got through since", "the cellar is flooded");
        now = now.plus(Duration.ofDays(6));
        deliveries.round();
        assertThat(states()).contains("given-up");
        assertThat(ida.get("/messages").body()).contains("given up");
    }

    private List<String> states() throws Exception {
        JsonNode messages = new ObjectMapper().readTree(ida.get("/api/messages").body());
        return messages.findValuesAsText("state");
    }

    @Test
    void a_way_and_a_person_that_are_removed_are_told_no_more_and_their_history_stays() throws Exception {
        String page = odasPage();
        Channel channel = withWebhook(page);
        new FindingLog(store).keep(List.of(InventedFindings.swarm()), 1, deliveries);
        now = now.plus(Duration.ofMinutes(3));
        deliveries.round();
        assertThat(leadsTo(ida.fill(page, page + "/channels/" + channel.id() + "/remove", Map.of())))
                .isEqualTo(page);
        assertThat(book().channels()).isEmpty();
        assertThat(leadsTo(ida.fill(page, page + "/remove", Map.of()))).isEqualTo("/people");
        assertThat(ida.get(page).statusCode()).isEqualTo(404);
        assertThat(states()).containsExactly("sent");
    }

    @Test
    void one_persons_channel_is_not_changed_by_anothers_address_and_nobody_outside_sees_any() throws Exception {
        String page = odasPage();
        Channel channel = withWebhook(page);
        String other = leadsTo(ida.fill("/people", "/people", Map.of("name", "Una", "zone", "UTC")));
        assertThat(ida.fill(other, other + "/channels/" + channel.id() + "/remove", Map.of())
                        .statusCode())
                .isEqualTo(404);
        assertThat(book().channels()).hasSize(1);
        assertThat(ida.post(page + "/remove", Map.of()).statusCode())
                .as("without the token")
                .isEqualTo(403);
        ida.fill(page, "/sign-out", Map.of());
        assertThat(ida.get("/api/people").statusCode()).isEqualTo(401);
        assertThat(leadsTo(ida.get(page))).startsWith("/sign-in");
    }
}
