package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.duskline.web.deliver.InventedAlarms.raised;
import static org.duskline.web.deliver.InventedAlarms.turned;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
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

class OutboxTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final Instant ONSET = Instant.parse("2026-05-12T11:04:00Z");
    private static final Finding SWARM = raised("Mill Race", Kind.MOVE_IN, ONSET);

    @TempDir
    Path folder;

    private final SetClock clock = new SetClock(ONSET.plus(Duration.ofMinutes(9)));
    private Store store;
    private Deliveries deliveries;
    private FindingLog findings;
    private Outbox outbox;
    private Channel log;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("outbox.db"));
        store.line().put(new Trap("Mill Race", 47.5, 14.5, VIENNA));
        findings = new FindingLog(store);
        Optional<URI> pages = Optional.of(URI.create("https://line.example"));
        deliveries = Deliveries.open(
                store, new Deliveries.Equipment(Optional.empty(), Optional.empty(), pages), clock, new Random(3));
        outbox = new Outbox(new AlertText(store.line()::trap, deliveries.links(), pages), clock);
        Person ada = deliveries.book().add("Ada", VIENNA, Optional.empty());
        log = deliveries.book().add(ada, Means.LOG, "", "", AddressBook.USUAL_KINDS);
    }

    @AfterEach
    void close() {
        deliveries.close();
        store.close();
    }

    private Decision put(Finding finding) {
        return store.jdbi().inTransaction(handle -> outbox.put(handle, log, finding));
    }

    private void goOut() {
        clock.pass(Duration.ofMinutes(5));
        deliveries.round();
    }

    private Finding swarmTurned(Stage stage) {
        return turned(SWARM, stage, clock.instant());
    }

    @Test
    void folding_the_past_again_tells_nothing_again() {
        assertThat(put(SWARM)).isEqualTo(Decision.OPENED);
        goOut();
        assertThat(put(SWARM)).isEqualTo(Decision.SAME_AGAIN);
        assertThat(put(swarmTurned(Stage.STRENGTHENED))).isEqualTo(Decision.CONTINUED);
        assertThat(put(swarmTurned(Stage.STRENGTHENED))).isEqualTo(Decision.SAME_AGAIN);
    }

    @Test
    void a_withdrawal_goes_to_whoever_got_the_alarm_and_to_nobody_else() {
        put(SWARM);
        goOut();
        Person bo = deliveries.book().add("Bo", VIENNA, Optional.empty());
        Channel later = deliveries.book().add(bo, Means.LOG, "", "", AddressBook.USUAL_KINDS);
        Finding withdrawn = swarmTurned(Stage.WITHDRAWN);
        assertThat(put(withdrawn)).isEqualTo(Decision.CONTINUED);
        assertThat(store.jdbi()
                        .<Decision, RuntimeException>inTransaction(handle -> outbox.put(handle, later, withdrawn)))
                .isEqualTo(Decision.NOT_CONCERNED);
    }

    @Test
    void an_alarm_withdrawn_before_it_went_out_reaches_nobody() {
        put(SWARM);
        assertThat(put(swarmTurned(Stage.WITHDRAWN))).isEqualTo(Decision.TAKEN_BACK);
        goOut();
        assertThat(deliveries.latest(10)).isEmpty();
    }

    @Test
    void what_strengthens_before_it_went_out_is_told_once_in_its_stronger_form() {
        put(SWARM);
        assertThat(put(swarmTurned(Stage.STRENGTHENED))).isEqualTo(Decision.FOLDED_IN);
        goOut();
        assertThat(deliveries.latest(10))
                .singleElement()
                .extracting(Parcel::title)
                .isEqualTo("Mill Race: a swarm has moved in, borne out since");
    }

    @Test
    void that_a_swarm_is_all_in_is_no_message_of_its_own() {
        put(SWARM);
        assertThat(put(swarmTurned(Stage.ARRIVED))).isEqualTo(Decision.FOLDED_IN);
        goOut();
        assertThat(put(swarmTurned(Stage.ARRIVED))).isEqualTo(Decision.SAME_AGAIN);
        assertThat(put(swarmTurned(Stage.STRENGTHENED))).isEqualTo(Decision.CONTINUED);
    }

    @Test
    void a_node_that_comes_and_goes_is_told_once() {
        Finding silent = raised("Mill Race", Kind.UNHEARD, ONSET);
        assertThat(put(silent)).isEqualTo(Decision.OPENED);
        goOut();
        Finding again = raised("Mill Race", Kind.UNHEARD, ONSET.plusSeconds(3600));
        assertThat(put(again)).isEqualTo(Decision.FLAPPING);
        clock.pass(Outbox.FLAP_PAUSE);
        assertThat(put(raised("Mill Race", Kind.UNHEARD, ONSET.plusSeconds(50_000))))
                .isEqualTo(Decision.OPENED);
    }

    @Test
    void a_case_that_swings_between_raised_and_withdrawn_stops_being_told() {
        put(SWARM);
        goOut();
        int told = 0;
        for (int swing = 0; swing < 6; swing++) {
            told += put(swarmTurned(Stage.WITHDRAWN)) == Decision.CONTINUED ? 1 : 0;
            goOut();
            told += put(swarmTurned(Stage.RAISED)) == Decision.CONTINUED ? 1 : 0;
            goOut();
        }
        assertThat(told).as("withdrawn, raised again, withdrawn").isEqualTo(3);
        assertThat(deliveries.latest(100)).hasSize(4);
    }

    @Test
    void two_traps_that_fill_within_a_minute_make_one_message() {
        put(SWARM);
        for (int seconds = 0; seconds < 60; seconds += 10) {
            clock.pass(Duration.ofSeconds(10));
            deliveries.round();
        }
        put(raised("Alder Sluice", Kind.MOVE_IN, ONSET.plusSeconds(60)));
        goOut();
        assertThat(deliveries.latest(10))
                .singleElement()
                .satisfies(message -> assertThat(message.text()).contains("Mill Race", "Alder Sluice"));
    }

    @Test
    void a_second_swarm_is_never_held_back_as_flapping() {
        put(SWARM);
        goOut();
        put(swarmTurned(Stage.WITHDRAWN));
        goOut();
        assertThat(put(raised("Mill Race", Kind.MOVE_IN, ONSET.plusSeconds(3600))))
                .isEqualTo(Decision.OPENED);
    }

    @Test
    void what_a_person_does_not_want_is_not_told() {
        Channel only = deliveries.book().add(log.person(), Means.LOG, "", "", Set.of(Kind.OVERHEATING));
        assertThat(store.jdbi().<Decision, RuntimeException>inTransaction(handle -> outbox.put(handle, only, SWARM)))
                .isEqualTo(Decision.NOT_WANTED);
    }

    @Test
    void a_finding_that_cannot_be_kept_leaves_no_alert() {
        FindingLog.Along breaks = (handle, changes) -> {
            deliveries.write(handle, changes);
            throw new IllegalStateException("the disk is full");
        };
        assertThatThrownBy(() -> findings.keep(List.of(SWARM), 1, breaks)).hasMessage("the disk is full");
        goOut();
        assertThat(findings.all()).isEmpty();
        assertThat(deliveries.latest(10)).isEmpty();
    }

    @Test
    void after_the_last_day_a_message_is_given_up_and_says_why() {
        Channel mail =
                deliveries.book().add(log.person(), Means.EMAIL, "keeper@line.example", "", Set.of(Kind.MOVE_IN));
        deliveries.book().remove(log.id());
        findings.keep(List.of(SWARM), 1, deliveries);
        for (int hour = 0; hour < 6 * 24; hour++) {
            clock.pass(Duration.ofHours(1));
            deliveries.round();
        }
        Parcel parcel = deliveries.latest(1).get(0);
        assertThat(parcel.channel()).isEqualTo(mail.id());
        assertThat(parcel.state()).isEqualTo(State.GIVEN_UP);
        assertThat(parcel.words()).contains("Enter the mail server");
    }

    /** Civil dusk of 12 May 2026 at 47.5 N 14.5 E is about 20:57, dawn about 04:52 (see the module's sun checks). */
    @Test
    void a_move_in_says_what_how_sure_since_when_how_big_and_what_to_do_by_when() {
        put(SWARM);
        goOut();
        String text = deliveries.latest(1).get(0).text();
        assertThat(text)
                .startsWith("What: A swarm has moved in at Mill Race.\n"
                        + "How sure: very likely (93 %); otherwise somebody's hands 5 %, nothing at all 2 %.\n"
                        + "Since: Tue 12 May, 13:04, 9 min ago.\n"
                        + "How big: about 1.4 kg (1.1 to 1.8), some 11,000 bees.\n")
                .contains("By when: from Tue 2", "to Wed 04:", "Veil, gloves", "Local law")
                .contains("Answer: https://line.example/answer?link=")
                .contains("for who may sign in: https://line.example/story?finding=move-in");
        String link =
                text.substring(text.indexOf("link=") + 5).lines().findFirst().orElseThrow();
        assertThat(deliveries.links().verify(link, clock.instant()))
                .isInstanceOfSatisfying(
                        AnswerLink.Check.Valid.class,
                        valid -> assertThat(valid.claim().onset()).isEqualTo(ONSET));
    }
}
