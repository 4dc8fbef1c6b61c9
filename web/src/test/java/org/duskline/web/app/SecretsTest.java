package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.AppenderBase;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import com.sun.net.httpserver.HttpServer;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.duskline.collector.testing.Await;
import org.duskline.collector.testing.Mosquitto;
import org.duskline.collector.testing.Needs;
import org.duskline.web.deliver.Deliveries;
import org.duskline.web.page.PlainBrowser;
import org.duskline.web.settings.Settings;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;

/**
 * A keeper uses every secret that the program knows, rightly and wrongly, with the log as talkative as it can be set; none
 * of them is then on a page, in an answer for programs, in the log or in what the commands print.
 */
class SecretsTest {
    private static final String MAIL = "plum stone jam";
    private static final String BROKER = "thistle down drift";
    private static final String WEBHOOK = "wren under the eaves";
    private static final String SIGN_IN = "elder hedge at seven";
    private static final String MISTYPED = "elder hedge at eight";
    private static final Pattern LINK = Pattern.compile("/answer\\?link=([A-Za-z0-9._~-]+)");

    @TempDir
    Path folder;

    private final List<String> logged = new CopyOnWriteArrayList<>();
    private final List<String> posted = new CopyOnWriteArrayList<>();
    private final AppenderBase<ILoggingEvent> listening = new AppenderBase<>() {
        @Override
        protected void append(ILoggingEvent event) {
            logged.add(event.getFormattedMessage()
                    + (event.getThrowableProxy() == null
                            ? ""
                            : ThrowableProxyUtil.asString(event.getThrowableProxy())));
        }
    };
    private GreenMail mail;
    private HttpServer webhook;
    private Mosquitto broker;

    @BeforeAll
    static void onlyWithABroker() {
        Needs.program("mosquitto");
    }

    @BeforeEach
    void open() throws Exception {
        listening.start();
        logger(Logger.ROOT_LOGGER_NAME).addAppender(listening);
        mail = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        mail.start();
        mail.setUser("keeper@line.example", "duskline", "another password than ours");
        webhook = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        webhook.createContext("/", exchange -> {
            posted.add(new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
            exchange.sendResponseHeaders(500, -1);
            exchange.close();
        });
        webhook.start();
        broker = Mosquitto.openToAll(folder.resolve("mosquitto"), Mosquitto.freePort())
                .start();
    }

    @AfterEach
    void close() throws Exception {
        broker.close();
        webhook.stop(0);
        mail.stop();
        logger(Logger.ROOT_LOGGER_NAME).detachAppender(listening);
        logger("org.duskline").setLevel(null);
    }

    private static Logger logger(String name) {
        return (Logger) LoggerFactory.getLogger(name);
    }

    private Map<String, String> environment() {
        return Map.of("DUSKLINE_MQTT_PASSWORD", BROKER, "DUSKLINE_MAIL_PASSWORD", MAIL);
    }

    private Path settingsFile() throws Exception {
        return Files.writeString(folder.resolve("duskline.yaml"), """
                line: %s
                mqtt: {url: "%s", user: "duskline"}
                mail: {host: "127.0.0.1", port: %d, security: "none", user: "duskline", from: "duskline@line.example"}
                pages: {port: 0, address: "http://127.0.0.1:9"}
                """.formatted(
                RecordedSeason.line(folder), broker.address(), mail.getSmtp().getPort()));
    }

    @Test
    void no_secret_is_on_a_page_in_the_log_or_in_what_a_command_prints() throws Exception {
        Path file = settingsFile();
        List<String> shown = new ArrayList<>();
        List<String> secrets = new ArrayList<>(List.of(MAIL, BROKER, WEBHOOK, SIGN_IN, MISTYPED));
        for (String command : List.of("doctor", "settings")) {
            Session session = Session.with(environment(), command, "--config", file.toString());
            assertThat(session.out()).isNotEmpty();
            shown.add(session.out() + session.err());
        }
        Logs.detail("trace");
        try (Service service =
                Service.start(Wishes.of(Settings.read(Optional.of(file), environment())), Clock.systemUTC())) {
            String code = service.ownersCode().orElseThrow();
            PlainBrowser keeper =
                    new PlainBrowser(URI.create(service.pagesAddress()).getPort());
            join(keeper, code);
            addWays(keeper);
            String link = answerByMessage(keeper);
            secrets.addAll(List.of(code, code.replace("-", ""), link));
            shown.addAll(everyPage(keeper));
        }
        assertThat(posted).as("the webhook was told").isNotEmpty();
        assertThat(logged).as("the log was listened to").isNotEmpty();
        for (String secret : secrets) {
            assertThat(shown).as("shown").noneMatch(page -> page.contains(secret));
            assertThat(logged).as("logged").noneMatch(line -> line.contains(secret));
        }
    }

    private static void join(PlainBrowser keeper, String code) throws Exception {
        Map<String, String> right = Map.of("code", code, "name", "Ida", "password", SIGN_IN);
        assertThat(PlainBrowser.leadsTo(keeper.fill("/join", "/join", right))).isEqualTo("/");
        PlainBrowser stranger = new PlainBrowser(keeper.port());
        stranger.fill("/sign-in", "/sign-in", Map.of("name", "Ida", "password", MISTYPED));
        stranger.fill("/sign-in", "/sign-in", Map.of("name", SIGN_IN, "password", SIGN_IN));
    }

    private void addWays(PlainBrowser keeper) throws Exception {
        keeper.fill("/people", "/people", Map.of("name", "Ida", "zone", "Europe/Vienna"));
        String address = "http://127.0.0.1:" + webhook.getAddress().getPort() + "/";
        String person = "/people/1";
        keeper.fill(person, person + "/channels", Map.of("means", "webhook", "address", address, "secret", WEBHOOK));
        keeper.fill(person, person + "/channels", Map.of("means", "email", "address", "keeper@line.example"));
        keeper.fill(person, person + "/channels/1/test", Map.of());
        keeper.fill(person, person + "/channels/2/test", Map.of());
        assertThat(keeper.get("/api/people").body()).contains("keeper@line.example");
    }

    /** Somebody answers by the link of a message, and then a damaged one is tried. */
    private String answerByMessage(PlainBrowser keeper) throws Exception {
        keepASwarm();
        Matcher[] found = {null};
        Await.until(
                "the webhook is told of the swarm, with a link",
                () -> posted.stream()
                        .map(LINK::matcher)
                        .filter(Matcher::find)
                        .peek(matcher -> found[0] = matcher)
                        .findFirst()
                        .isPresent());
        String link = found[0].group(1);
        PlainBrowser reader = new PlainBrowser(keeper.port());
        reader.fill("/answer?link=" + link, "/answer", Map.of("link", link, "id", "phone-0001", "answer", "going"));
        assertThat(reader.get("/answer?link=" + link).body()).contains("Ida is going");
        assertThat(reader.get("/answer?link=x" + link).statusCode()).isEqualTo(403);
        return link;
    }

    private void keepASwarm() {
        Instant onset = Instant.now().truncatedTo(ChronoUnit.SECONDS).minusSeconds(600);
        Finding swarm = new Finding(
                "Mill Race",
                "n07",
                Kind.MOVE_IN,
                onset,
                onset.plusSeconds(300),
                Stage.RAISED,
                onset.plusSeconds(300),
                0.97,
                "invented",
                List.of(),
                Map.of(),
                Optional.empty(),
                1);
        var equipment = new Deliveries.Equipment(
                Optional.empty(), Optional.empty(), Optional.of(URI.create("http://127.0.0.1:9")));
        // Written some minutes ago, so that nobody waits for another trap to share the message with.
        Clock earlier = Clock.offset(Clock.systemUTC(), Duration.ofMinutes(-5));
        try (Store store = Store.open(folder.resolve("duskline.db"));
                Deliveries outbox = Deliveries.open(store, equipment, earlier, new Random(1))) {
            FindingLog findings = new FindingLog(store);
            findings.keep(List.of(swarm), findings.cursor(), outbox);
        }
    }

    private static List<String> everyPage(PlainBrowser keeper) throws Exception {
        List<String> pages = new ArrayList<>();
        for (String page : List.of(
                "/",
                "/line",
                "/alerts",
                "/alerts?all",
                "/traps/Mill%20Race",
                "/traps/Mill%20Race/closing",
                "/tuning",
                "/more",
                "/people",
                "/people/1",
                "/messages",
                "/sign-in",
                "/join",
                "/api/people",
                "/api/messages",
                "/api/findings",
                "/api/line",
                "/api/tonight",
                "/api/tonight.txt",
                "/api/visits")) {
            var answer = keeper.get(page);
            assertThat(answer.statusCode()).as(page).isLessThan(500).isNotEqualTo(404);
            pages.add(answer.body());
        }
        return pages;
    }
}
