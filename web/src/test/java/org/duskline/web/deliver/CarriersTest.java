package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.Random;
import org.duskline.collector.store.Store;
import org.duskline.collector.testing.Mosquitto;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The test message says what really happened. */
class CarriersTest {
    private static final Duration PATIENCE = Duration.ofSeconds(2);

    @TempDir
    Path folder;

    private final SetClock clock = new SetClock(Instant.parse("2026-05-12T12:00:00Z"));

    private Outcome test(Optional<MailSettings> mail, Means means, String address, String secret) {
        try (Store store = Store.open(folder.resolve("test.db"));
                Deliveries deliveries = Deliveries.open(
                        store,
                        new Deliveries.Equipment(
                                mail, Optional.empty(), Optional.empty(), PATIENCE, RetrySchedule.USUAL),
                        clock,
                        new Random(1))) {
            Person ada = deliveries.book().add("Ada", ZoneId.of("Europe/Vienna"), Optional.empty());
            Channel channel = deliveries.book().add(ada, means, address, secret, AddressBook.USUAL_KINDS);
            assertThat(channel.toString()).doesNotContain(Receiver.SECRET);
            return deliveries.test(channel);
        }
    }

    private Outcome mailed(MailSettings settings) {
        return test(Optional.of(settings), Means.EMAIL, "keeper@line.example", "");
    }

    @Test
    void a_mail_with_login_arrives() throws Exception {
        try (PostOffice office = new PostOffice()) {
            assertThat(mailed(office.settings(PostOffice.PASSWORD))).isInstanceOf(Outcome.Delivered.class);
            assertThat(office.letters()).hasSize(1);
            assertThat(office.letters().get(0).getSubject()).isEqualTo("Test of your alerts");
        }
    }

    @Test
    void a_wrong_password_is_reported_in_the_servers_words_and_not_shown() throws Exception {
        try (PostOffice office = new PostOffice()) {
            MailSettings settings = office.settings("wrong horse");
            assertThat(mailed(settings)).isInstanceOf(Outcome.Failed.class);
            assertThat(mailedAgain(settings))
                    .contains("refused the login", "535")
                    .doesNotContain("wrong horse");
            assertThat(settings.toString()).doesNotContain("wrong horse");
            assertThat(office.letters()).isEmpty();
        }
    }

    private String mailedAgain(MailSettings settings) {
        var carrier = new MailCarrier(settings, "x", PATIENCE, clock, Pictures.none());
        return carrier.carry(channel(), parcel()).words();
    }

    private static Channel channel() {
        Person ada = new Person(1, "Ada", ZoneId.of("UTC"), Optional.empty(), Optional.empty());
        return new Channel(1, ada, Means.EMAIL, "keeper@line.example", "", AddressBook.USUAL_KINDS, Optional.empty());
    }

    private Parcel parcel() {
        Instant now = clock.instant();
        var alert = new Alert(1, "t", "s", Optional.empty(), "A title\r\nBcc: other@line.example", "words", "{}", now);
        return new Parcel(
                1, 1, now, now, 0, State.WAITING, "", Optional.empty(), java.util.List.of(alert), java.util.List.of());
    }

    @Test
    void a_trap_named_with_a_line_break_adds_no_header_to_a_mail() throws Exception {
        try (PostOffice office = new PostOffice()) {
            var carrier = new MailCarrier(office.settings(PostOffice.PASSWORD), "x", PATIENCE, clock, Pictures.none());
            assertThat(carrier.carry(channel(), parcel())).isInstanceOf(Outcome.Delivered.class);
            assertThat(office.letters()).hasSize(1);
            assertThat(office.letters().get(0).getHeader("Bcc")).isNull();
        }
    }

    /** A server that offers no STARTTLS must not be given the password (RFC 3207 section 6). */
    @Test
    void nothing_is_sent_in_the_clear_where_tls_was_asked_for() throws Exception {
        try (PostOffice office = new PostOffice()) {
            MailSettings settings = new MailSettings(
                    "127.0.0.1",
                    office.port(),
                    MailSettings.Security.STARTTLS,
                    Optional.of(new MailSettings.Login(PostOffice.NAME, PostOffice.PASSWORD)),
                    "duskline@line.example",
                    Optional.empty());
            assertThat(mailed(settings)).isInstanceOf(Outcome.Failed.class);
            assertThat(office.letters()).isEmpty();
        }
    }

    @Test
    void a_password_is_not_sent_to_another_machine_in_the_clear() {
        assertThatThrownBy(() -> new MailSettings(
                        "mail.line.example",
                        25,
                        MailSettings.Security.NONE,
                        Optional.of(new MailSettings.Login("a", "b")),
                        "duskline@line.example",
                        Optional.empty()))
                .hasMessageContaining("starttls or tls");
    }

    @Test
    void a_webhook_that_answers_500_is_quoted() throws Exception {
        try (Receiver receiver = new Receiver()) {
            receiver.be(Receiver.Mood.ANSWERS_500);
            assertThat(test(Optional.empty(), Means.WEBHOOK, receiver.address(), Receiver.SECRET))
                    .isEqualTo(new Outcome.Failed("The webhook at 127.0.0.1 answered 500: the cellar is flooded."));
        }
    }

    @Test
    void a_webhook_that_never_answers_is_not_waited_for_for_ever() throws Exception {
        try (Receiver receiver = new Receiver()) {
            receiver.be(Receiver.Mood.NEVER_ANSWERS);
            assertThat(test(Optional.empty(), Means.WEBHOOK, receiver.address(), Receiver.SECRET))
                    .isInstanceOf(Outcome.Failed.class);
        }
    }

    @Test
    void a_webhook_where_nothing_listens_is_told_in_plain_words() throws Exception {
        String nobody = "http://127.0.0.1:" + Mosquitto.freePort() + "/hook";
        assertThat(test(Optional.empty(), Means.WEBHOOK, nobody, Receiver.SECRET))
                .isEqualTo(new Outcome.Failed("The webhook at 127.0.0.1 could not be reached:"
                        + " nothing answers at this address and port."));
    }

    /** The name ends in "invalid", which RFC 2606 keeps free, so that no machine ever has it. */
    @Test
    void a_webhook_whose_machine_is_misspelt_is_told_in_plain_words() {
        assertThat(test(Optional.empty(), Means.WEBHOOK, "https://valley.invalid/hook", Receiver.SECRET)
                        .words())
                .contains("no machine of this name is known");
    }

    @Test
    void mail_without_a_mail_server_says_what_to_enter() {
        assertThat(test(Optional.empty(), Means.EMAIL, "keeper@line.example", "")
                        .words())
                .contains("Enter the mail server");
    }
}
