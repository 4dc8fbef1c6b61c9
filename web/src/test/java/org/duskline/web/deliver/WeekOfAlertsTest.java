package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskline.web.deliver.InventedAlarms.raised;
import static org.duskline.web.deliver.InventedAlarms.turned;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.mail.internet.MimeMessage;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Trap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A week on an invented line. On Tuesday the mail server is down from 12:00 to 18:00, the webhook answers 500 from 12:00 to
 * 14:00, and the program stands still from 14:50 to 15:10; on Thursday the webhook does not answer for half an hour, and on
 * Friday it answers late, but in time.
 */
class WeekOfAlertsTest {
    private static final Duration STEP = Duration.ofMinutes(5);
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final Duration PATIENCE = Duration.ofSeconds(3);

    private static final Instant LEFT = at("14T13:10");
    private static final Finding MILL = raised("Mill Race", Kind.MOVE_IN, at("12T13:04"));
    private static final Finding HEDGE = raised("Hedge End", Kind.SCOUTING, at("12T16:02"));
    private static final Finding BATTERY = raised("Top Field", Kind.BATTERY_LOW, at("13T21:30"));
    private static final Finding QUARRY = raised("Quarry", Kind.MOVE_IN, LEFT);
    private static final Finding ORCHARD = raised("Orchard", Kind.MOVE_IN, LEFT.plusSeconds(60));
    private static final Finding FALSE_ALARM = raised("Hedge End", Kind.MOVE_IN, at("15T11:00"));
    private static final Finding HEAT = raised("Mill Race", Kind.OVERHEATING, at("16T01:00"));

    private static final List<String> TOLD = List.of(
            "A swarm has moved in at Mill Race.",
            "Scouts are looking at the box at Hedge End.",
            "A swarm has moved in, borne out since at Mill Race.",
            "The battery is low at Top Field.",
            "A swarm has moved in at Quarry.",
            "A swarm has moved in at Orchard.",
            "A swarm has moved in at Hedge End.",
            "Withdrawn, no longer held: a swarm has moved in at Hedge End.",
            "The closed box is getting too warm at Mill Race.",
            "Nothing heard from the node at Top Field.",
            "Nothing heard from the node: over at Top Field.");

    @TempDir
    Path folder;

    private final SetClock clock = new SetClock(at("11T00:00"));
    private final List<JsonNode> published = new ArrayList<>();
    private PostOffice mail;
    private Receiver receiver;
    private Store store;
    private FindingLog findings;
    private Deliveries deliveries;

    private static Instant at(String dayAndHour) {
        return Instant.parse("2026-05-" + dayAndHour + ":00Z");
    }

    @BeforeEach
    void someone_wants_to_be_told() throws Exception {
        mail = new PostOffice();
        receiver = new Receiver();
        start();
        store.line().put(new Trap("Mill Race", 47.5, 14.5, VIENNA));
        Person ada = deliveries
                .book()
                .add("Ada", VIENNA, Optional.of(new QuietHours(LocalTime.of(22, 0), LocalTime.of(7, 0))));
        var kinds = AddressBook.USUAL_KINDS;
        deliveries.book().add(ada, Means.EMAIL, "keeper@line.example", "", kinds);
        deliveries.book().add(ada, Means.WEBHOOK, receiver.address(), Receiver.SECRET, kinds);
        deliveries.book().add(ada, Means.MQTT, "ada", "", kinds);
    }

    @AfterEach
    void all_is_closed() {
        stop();
        receiver.close();
        mail.close();
    }

    private void start() {
        store = Store.open(folder.resolve("week.db"));
        findings = new FindingLog(store);
        Broker broker = (whom, payload) -> {
            assertThat(whom).isEqualTo("ada");
            published.add(json(payload));
        };
        var equipment = new Deliveries.Equipment(
                Optional.of(mail.settings(PostOffice.PASSWORD)),
                Optional.of(broker),
                Optional.empty(),
                PATIENCE,
                RetrySchedule.USUAL);
        deliveries = Deliveries.open(store, equipment, clock, new Random(5));
    }

    private void stop() {
        deliveries.close();
        store.close();
    }

    private static JsonNode json(byte[] text) {
        try {
            return new ObjectMapper().readTree(text);
        } catch (java.io.IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private Map<Instant, Runnable> week() {
        Map<Instant, Runnable> week = new TreeMap<>();
        week.put(at("12T12:00"), () -> {
            mail.shut();
            receiver.be(Receiver.Mood.ANSWERS_500);
        });
        found(week, at("12T13:10"), MILL);
        week.put(at("12T14:00"), () -> receiver.be(Receiver.Mood.TAKES));
        week.put(at("12T14:50"), this::standStill);
        found(week, at("12T16:10"), HEDGE);
        week.put(at("12T18:00"), mail::open);
        found(week, at("12T19:30"), turned(MILL, Stage.STRENGTHENED, at("12T19:30")));
        found(week, at("13T21:40"), BATTERY);
        found(week, at("14T13:15"), QUARRY, ORCHARD);
        week.put(at("14T13:10"), () -> receiver.be(Receiver.Mood.NEVER_ANSWERS));
        week.put(at("14T13:40"), () -> receiver.be(Receiver.Mood.TAKES));
        week.put(at("15T11:00"), () -> receiver.be(Receiver.Mood.TAKES_SLOWLY));
        week.put(at("15T12:30"), () -> receiver.be(Receiver.Mood.TAKES));
        found(week, at("15T11:10"), FALSE_ALARM);
        found(week, at("15T12:00"), turned(FALSE_ALARM, Stage.WITHDRAWN, at("15T12:00")));
        found(week, at("16T01:10"), HEAT);
        for (int hour = 8; hour < 14; hour++) {
            Finding silent = raised("Top Field", Kind.UNHEARD, at("16T" + (hour < 10 ? "0" : "") + hour + ":00"));
            found(week, silent.onset().plus(Duration.ofMinutes(10)), silent);
            Instant heard = silent.onset().plus(Duration.ofMinutes(30));
            found(week, heard, turned(silent, Stage.ENDED, heard));
        }
        return week;
    }

    private void found(Map<Instant, Runnable> week, Instant when, Finding... changes) {
        week.put(when, () -> findings.keep(List.of(changes), 1, deliveries));
    }

    private void standStill() {
        stop();
        clock.set(at("12T15:10"));
        start();
        Pulse.Gap gap = deliveries.gap(14).orElseThrow();
        assertThat(gap).isEqualTo(new Pulse.Gap(at("12T14:45"), at("12T15:10"), 14));
        deliveries.tellMissed(gap, 14, List.of());
        // The same said again, as after a crash right behind it, is not told again.
        deliveries.tellMissed(gap, 14, List.of());
    }

    private void live() {
        Map<Instant, Runnable> week = new TreeMap<>(week());
        while (clock.instant().isBefore(at("18T00:00"))) {
            Optional.ofNullable(week.remove(clock.instant())).ifPresent(Runnable::run);
            deliveries.beat();
            deliveries.round();
            clock.pass(STEP);
        }
        assertThat(week).isEmpty();
    }

    @Test
    void every_alert_arrives_once_and_in_order_on_every_channel() throws Exception {
        live();
        List<String> letters = new ArrayList<>();
        for (MimeMessage letter : mail.letters()) {
            letters.add((String) letter.getContent());
        }
        assertThat(whats(letters.stream())).as("mail").isEqualTo(TOLD);
        assertThat(whats(receiver.taken().stream()
                        .map(post -> post.json().path("text").asText())))
                .as("webhook")
                .isEqualTo(TOLD);
        assertThat(published.stream()
                        .filter(alert -> alert.has("trap"))
                        .map(alert -> alert.path("thread").asText()
                                + alert.path("step").asText()))
                .as("broker")
                .hasSize(TOLD.size())
                .doesNotHaveDuplicates();
        assertThat(published.stream()
                        .filter(alert -> alert.has("trap"))
                        .map(alert -> alert.path("trap").asText())
                        .toList())
                .as("order on the broker")
                .isEqualTo(TOLD.stream()
                        .map(line -> line.substring(line.lastIndexOf(" at ") + 4, line.length() - 1))
                        .toList());
        assertThat(deliveries.latest(1000)).allMatch(parcel -> parcel.state() == State.SENT);
        programNewsIsToldOnce(letters);
        letterThreadsHold();
        repeatsBearTheSameIdentity();
        whatIsTakenLateButInTimeIsNotSentAgain();
    }

    private void whatIsTakenLateButInTimeIsNotSentAgain() {
        List<String> late = receiver.posts().stream()
                .filter(post -> post.mood() == Receiver.Mood.TAKES_SLOWLY)
                .map(Receiver.Post::id)
                .toList();
        assertThat(late).as("an alarm and its withdrawal").hasSize(2);
        assertThat(receiver.posts().stream().map(Receiver.Post::id).filter(late::contains))
                .containsExactlyElementsOf(late);
    }

    private static List<String> whats(Stream<String> texts) {
        return texts.flatMap(String::lines)
                .filter(line -> line.startsWith("What: "))
                .map(line -> line.substring("What: ".length()).strip())
                .toList();
    }

    private void programNewsIsToldOnce(List<String> letters) {
        assertThat(letters)
                .filteredOn(text -> text.contains("Duskline was down from Tue 12 May, 16:45"))
                .hasSize(1);
        assertThat(letters).noneMatch(text -> text.contains("Nothing gets through"));
        assertThat(published.stream().map(alert -> alert.path("title").asText()))
                .filteredOn(title -> title.startsWith("Nothing gets through"))
                .containsExactly("Nothing gets through to Ada by e-mail to keeper@line.example");
        assertThat(published.stream().map(alert -> alert.path("title").asText()))
                .filteredOn(title -> title.startsWith("Duskline was down"))
                .hasSize(1);
    }

    /** RFC 5322 section 3.6.4. */
    private void letterThreadsHold() throws Exception {
        MimeMessage first = letter("Mill Race: a swarm has moved in");
        MimeMessage later = letter("Mill Race: a swarm has moved in, borne out since");
        assertThat(later.getHeader("References", null)).isEqualTo(first.getMessageID());
        assertThat(later.getHeader("In-Reply-To", null)).isEqualTo(first.getMessageID());
        assertThat(first.getHeader("References", null)).isNull();
        assertThat(letter("2 happenings: Quarry, Orchard").getSentDate().toInstant())
                .isBefore(at("14T13:30"));
        assertThat(letter("Top Field: the battery is low").getSentDate().toInstant())
                .as("a battery waits for the morning, 7:00 in Vienna")
                .isEqualTo(at("14T05:00"));
        assertThat(letter("Mill Race: the closed box is getting too warm")
                        .getSentDate()
                        .toInstant())
                .as("heat in a closed box wakes somebody")
                .isBefore(at("16T01:20"));
    }

    private MimeMessage letter(String subject) throws Exception {
        List<MimeMessage> found = new ArrayList<>();
        for (MimeMessage letter : mail.letters()) {
            if (letter.getSubject().equals(subject)) {
                found.add(letter);
            }
        }
        assertThat(found).as(subject).hasSize(1);
        return found.get(0);
    }

    private void repeatsBearTheSameIdentity() {
        assertThat(receiver.posts())
                .as("it was tried in vain too")
                .hasSizeGreaterThan(receiver.taken().size() + 2);
        Map<String, String> bodies = new TreeMap<>();
        for (Receiver.Post post : receiver.posts()) {
            assertThat(bodies.computeIfAbsent(post.id(), id -> post.body())).isEqualTo(post.body());
            assertThat(post.signature())
                    .isEqualTo(WebhookCarrier.signature(Receiver.SECRET, post.time(), post.id(), post.body()));
        }
        assertThat(receiver.taken().stream().map(Receiver.Post::id)).doesNotHaveDuplicates();
        assertThat(receiver.taken()).hasSameSizeAs(bodies.keySet());
    }
}
