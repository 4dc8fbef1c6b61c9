package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskline.web.page.PlainBrowser.leadsTo;

import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.duskline.collector.store.Store;
import org.duskline.web.door.Account;
import org.duskline.web.door.Door;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SignInTest {
    private static final String PASSWORD = "elder hedge at seven";

    @TempDir
    Path folder;

    private Store store;
    private Door door;
    private Pages pages;
    private int port;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("duskline.db"));
        door = Door.open(store, () -> InventedLine.NOW);
        start(false, false);
    }

    private void start(boolean openHouse, boolean encrypted) {
        if (pages != null) {
            pages.stop();
        }
        InventedLine line = new InventedLine(InventedLine.Mood.BUSY);
        pages = new Pages(line, new Entrance(door, openHouse, encrypted), () -> InventedLine.NOW, List.of());
        port = pages.start("127.0.0.1", 0);
    }

    @AfterEach
    void close() {
        pages.stop();
        store.close();
    }

    private PlainBrowser browser() {
        return new PlainBrowser(port);
    }

    private PlainBrowser signedIn() throws Exception {
        if (!door.hasOwner()) {
            door.makeOwner("Ida", PASSWORD);
        }
        PlainBrowser browser = browser();
        browser.fill("/sign-in", "/sign-in", Map.of("name", "Ida", "password", PASSWORD));
        return browser;
    }

    @Test
    void before_anybody_has_an_account_every_page_leads_to_making_the_owners() throws Exception {
        assertThat(leadsTo(browser().get("/line"))).isEqualTo("/join");
        assertThat(browser().get("/join").body()).contains("owner’s account").contains("printed a code");
    }

    @Test
    void the_code_from_the_console_makes_the_owner_and_signs_them_in() throws Exception {
        PlainBrowser browser = browser();
        Map<String, String> form = Map.of("code", door.ownersCode(), "name", "Ida", "password", PASSWORD);
        assertThat(leadsTo(browser.fill("/join", "/join", form))).isEqualTo("/");
        assertThat(browser.get("/").body()).contains("Two traps to close tonight");
        assertThat(browser.get("/more").body()).contains("signed in as Ida");
    }

    @Test
    void a_wrong_code_makes_nothing_and_says_why() throws Exception {
        door.ownersCode();
        HttpResponse<String> answer =
                browser().fill("/join", "/join", Map.of("code", "AAAA-BBBB-CCCC", "name", "Ida", "password", PASSWORD));
        assertThat(answer.statusCode()).isEqualTo(403);
        assertThat(answer.body()).contains("This code does not hold");
        assertThat(door.hasOwner()).isFalse();
    }

    @Test
    void a_wrong_password_lets_nobody_in_and_does_not_say_which_was_wrong() throws Exception {
        door.makeOwner("Ida", PASSWORD);
        PlainBrowser browser = browser();
        String wrong = browser.fill("/sign-in", "/sign-in", Map.of("name", "Ida", "password", "elder hedge at six"))
                .body();
        String unknown = browser.fill("/sign-in", "/sign-in", Map.of("name", "Oda", "password", PASSWORD))
                .body();
        assertThat(wrong).contains("Name and password don’t go together").doesNotContain("elder hedge");
        assertThat(unknown).contains("Name and password don’t go together");
        assertThat(leadsTo(browser.get("/"))).isEqualTo("/sign-in");
    }

    @Test
    void somebody_who_signs_in_comes_to_the_page_they_asked_for() throws Exception {
        door.makeOwner("Ida", PASSWORD);
        PlainBrowser browser = browser();
        String signIn = leadsTo(browser.get("/traps/Alder%20Sluice?span=day"));
        assertThat(signIn).startsWith("/sign-in?to=");
        assertThat(browser.get(signIn).body()).contains("value=\"/traps/Alder%20Sluice?span=day\"");
        HttpResponse<String> in = browser.fill(
                signIn,
                "/sign-in",
                Map.of("name", "Ida", "password", PASSWORD, "to", "/traps/Alder%20Sluice?span=day"));
        assertThat(leadsTo(in)).isEqualTo("/traps/Alder%20Sluice?span=day");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://elsewhere.example/",
                "//elsewhere.example",
                "/\\elsewhere.example",
                "javascript:alert(1)"
            })
    void nobody_is_led_to_another_host_after_signing_in(String to) throws Exception {
        door.makeOwner("Ida", PASSWORD);
        HttpResponse<String> in =
                browser().fill("/sign-in", "/sign-in", Map.of("name", "Ida", "password", PASSWORD, "to", to));
        assertThat(leadsTo(in)).isEqualTo("/");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/line", "/api/tonight", "/live", "/api/traps/Alder%20Sluice/curve.csv"})
    void a_program_outside_is_told_and_given_nothing(String path) throws Exception {
        door.makeOwner("Ida", PASSWORD);
        HttpResponse<String> answer = browser().get(path);
        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.body()).doesNotContain("Alder Sluice").contains("Sign in");
    }

    @Test
    void the_cookie_is_out_of_reach_of_scripts_and_of_other_sites() throws Exception {
        assertThat(browser().get("/sign-in").headers().allValues("Set-Cookie"))
                .singleElement()
                .satisfies(cookie -> assertThat(cookie)
                        .contains("HttpOnly")
                        .contains("SameSite=Lax")
                        .contains("Path=/")
                        .doesNotContain("Secure"));
        start(false, true);
        assertThat(browser().get("/sign-in").headers().allValues("Set-Cookie"))
                .singleElement()
                .satisfies(cookie -> assertThat(cookie).contains("Secure"));
    }

    @Test
    void signing_in_gives_the_browser_another_cookie_so_that_one_planted_before_is_worth_nothing() throws Exception {
        door.makeOwner("Ida", PASSWORD);
        PlainBrowser browser = browser();
        browser.get("/sign-in");
        String planted = browser.cookies().get(0).getValue();
        browser.fill("/sign-in", "/sign-in", Map.of("name", "Ida", "password", PASSWORD));
        assertThat(browser.cookies().get(0).getValue()).isNotEqualTo(planted);
        assertThat(door.holder(planted)).isEmpty();
    }

    @Test
    void a_form_without_its_token_or_with_anothers_changes_nothing() throws Exception {
        PlainBrowser ida = signedIn();
        HttpResponse<String> without = ida.post("/sign-out", Map.of());
        assertThat(without.statusCode()).isEqualTo(403);
        assertThat(without.body()).contains("Nothing was changed");
        PlainBrowser other = browser();
        assertThat(ida.post("/sign-out", Map.of("token", other.token("/sign-in")))
                        .statusCode())
                .isEqualTo(403);
        assertThat(ida.get("/").statusCode()).isEqualTo(200);
    }

    @Test
    void a_script_of_ours_may_send_the_token_as_a_header() throws Exception {
        PlainBrowser ida = signedIn();
        Map<String, String> header = Map.of("Duskline-Token", ida.token("/more"));
        assertThat(ida.postJson("/sign-out", "{}", header).statusCode()).isEqualTo(303);
        assertThat(leadsTo(ida.get("/"))).isEqualTo("/sign-in");
    }

    @Test
    void looking_at_an_address_that_changes_something_changes_nothing() throws Exception {
        PlainBrowser ida = signedIn();
        assertThat(ida.get("/sign-out").statusCode()).isEqualTo(404);
        assertThat(ida.get("/password?old=x&password=y").statusCode()).isEqualTo(404);
        assertThat(ida.get("/").statusCode()).isEqualTo(200);
    }

    @Test
    void signing_out_ends_the_session_for_whoever_kept_the_cookie_too() throws Exception {
        PlainBrowser ida = signedIn();
        String kept = ida.cookies().get(0).getValue();
        assertThat(door.holder(kept)).isPresent();
        ida.fill("/more", "/sign-out", Map.of());
        assertThat(door.holder(kept)).isEmpty();
        assertThat(leadsTo(ida.get("/"))).isEqualTo("/sign-in");
    }

    @Test
    void a_new_password_needs_the_old_one_and_signs_out_the_other_browsers() throws Exception {
        PlainBrowser phone = signedIn();
        PlainBrowser desk = signedIn();
        Map<String, String> guessed = Map.of("old", "a guess of mine", "password", "hazel hedge at eight");
        assertThat(desk.fill("/more", "/password", guessed).statusCode()).isEqualTo(403);
        assertThat(phone.get("/").statusCode()).isEqualTo(200);
        Map<String, String> known = Map.of("old", PASSWORD, "password", "hazel hedge at eight");
        assertThat(leadsTo(desk.fill("/more", "/password", known))).isEqualTo("/more");
        assertThat(desk.get("/").statusCode()).isEqualTo(200);
        assertThat(leadsTo(phone.get("/"))).isEqualTo("/sign-in");
    }

    @Test
    void the_demo_needs_no_account_but_its_forms_need_their_token() throws Exception {
        start(true, false);
        PlainBrowser browser = browser();
        assertThat(browser.get("/").body()).contains("Two traps to close tonight");
        assertThat(browser.post("/sign-out", Map.of()).statusCode()).isEqualTo(403);
        door.makeOwner("Ida", PASSWORD);
        assertThat(leadsTo(browser.get("/"))).as("the house is closed then").isEqualTo("/sign-in");
    }

    /** Another site's name may be made to lead to this machine; its page must not read the demo under that name. */
    @Test
    void an_open_house_answers_to_this_machines_own_names_alone() throws Exception {
        start(true, false);
        try (java.net.Socket socket = new java.net.Socket("127.0.0.1", port)) {
            socket.getOutputStream()
                    .write("GET /api/line HTTP/1.1\r\nHost: elsewhere.example\r\nConnection: close\r\n\r\n".getBytes());
            String answer = new String(socket.getInputStream().readAllBytes());
            assertThat(answer).startsWith("HTTP/1.1 401").doesNotContain("Alder Sluice");
        }
    }

    @Test
    void a_feed_is_read_by_its_address_alone_and_only_by_the_right_one() throws Exception {
        Account ida = door.makeOwner("Ida", PASSWORD);
        pages.stop();
        Part feed = routes -> routes.get(
                "/feeds/{key}/names",
                context -> context.result(Visitor.of(context).name()));
        pages = new Pages(
                new InventedLine(InventedLine.Mood.BUSY),
                new Entrance(door, false, false),
                () -> InventedLine.NOW,
                List.of(feed));
        port = pages.start("127.0.0.1", 0);
        assertThat(browser().get("/feeds/" + door.feedToken(ida) + "/names").body())
                .isEqualTo("Ida");
        assertThat(browser().get("/feeds/" + door.feedToken(ida) + "x/names").statusCode())
                .isEqualTo(404);
        assertThat(browser()
                        .post("/feeds/" + door.feedToken(ida) + "/names", Map.of())
                        .statusCode())
                .isEqualTo(404);
    }

    @Test
    void what_draws_the_pages_is_for_everybody_and_holds_nothing() throws Exception {
        door.makeOwner("Ida", PASSWORD);
        assertThat(browser().get("/assets/notebook.css").statusCode()).isEqualTo(200);
        HttpRequest request = HttpRequest.newBuilder(
                        java.net.URI.create("http://127.0.0.1:" + port + "/assets/../line"))
                .build();
        assertThat(HttpClient.newHttpClient()
                        .send(request, BodyHandlers.ofString())
                        .body())
                .doesNotContain("Alder Sluice");
    }
}
