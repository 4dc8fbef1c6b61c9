package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.duskline.web.deliver.InventedAlarms.raised;

import jakarta.mail.Part;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.awt.image.BufferedImage;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import javax.imageio.ImageIO;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.collector.store.Store;
import org.duskline.web.picture.CurvePicture;
import org.duskline.web.picture.InventedRush;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An alert goes out with the curve around its onset, and never waits for it. */
class PictureInMailTest {
    private static final Instant ONSET = InventedRush.ONSET;
    private static final String TRAP = InventedRush.TRAP.name();
    private static final Duration PATIENCE = Duration.ofSeconds(5);

    @TempDir
    Path folder;

    private final SetClock clock = new SetClock(ONSET.plus(Duration.ofMinutes(9)));
    private PostOffice office;
    private Receiver receiver;
    private Store store;

    @BeforeEach
    void open() throws Exception {
        office = new PostOffice();
        receiver = new Receiver();
        store = Store.open(folder.resolve("alerts.db"));
        store.line().put(InventedRush.TRAP);
    }

    @AfterEach
    void close() {
        store.close();
        receiver.close();
        office.close();
    }

    private Optional<byte[]> drawn(String trap, Instant onset) {
        return Optional.of(CurvePicture.png(new InventedRush(), InventedRush.TRAP, onset, clock.instant()));
    }

    private List<MimeMessage> told(Artist artist, Kind kind) {
        var equipment = new Deliveries.Equipment(
                Optional.of(office.settings(PostOffice.PASSWORD)),
                Optional.empty(),
                Optional.of(URI.create("https://line.example")),
                PATIENCE,
                RetrySchedule.USUAL,
                Optional.of(artist));
        try (Deliveries deliveries = Deliveries.open(store, equipment, clock, new Random(1))) {
            Person ada = deliveries.book().add("Ada", InventedRush.TRAP.zone(), Optional.empty());
            deliveries.book().add(ada, Means.EMAIL, "keeper@line.example", "", AddressBook.USUAL_KINDS);
            deliveries.book().add(ada, Means.WEBHOOK, receiver.address(), Receiver.SECRET, AddressBook.USUAL_KINDS);
            new FindingLog(store).keep(List.of(raised(TRAP, kind, ONSET)), 1, deliveries);
            clock.pass(Duration.ofMinutes(5));
            deliveries.round();
        }
        return office.letters();
    }

    private static List<Part> parts(Part whole) throws Exception {
        if (!(whole.getContent() instanceof MimeMultipart several)) {
            return List.of(whole);
        }
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < several.getCount(); i++) {
            parts.addAll(parts(several.getBodyPart(i)));
        }
        return parts;
    }

    private static Part of(List<Part> parts, String type) throws Exception {
        for (Part part : parts) {
            if (part.isMimeType(type)) {
                return part;
            }
        }
        throw new AssertionError("No " + type + " in the mail.");
    }

    @Test
    void a_swarms_mail_carries_the_picture_with_a_content_id_that_its_page_names() throws Exception {
        MimeMessage letter = told(this::drawn, Kind.MOVE_IN).get(0);
        assertThat(letter.isMimeType("multipart/alternative")).isTrue();
        List<Part> parts = parts(letter);
        Part picture = of(parts, "image/png");
        String id = picture.getHeader("Content-ID")[0];
        assertThat(id).startsWith("<").endsWith(">");
        assertThat((String) of(parts, "text/html").getContent())
                .contains("src=\"cid:" + id.substring(1, id.length() - 1) + "\"", "alt=\"Bees in and out")
                .contains("<a href=\"https://line.example/answer?link=")
                .containsSubsequence("How sure", "<img", "What to do");
        assertThat((String) of(parts, "text/plain").getContent()).contains("What to do: ", "A swarm has moved in");
    }

    @Test
    void the_rushs_ink_is_where_the_rush_was() throws Exception {
        BufferedImage image;
        try (InputStream bytes =
                of(parts(told(this::drawn, Kind.MOVE_IN).get(0)), "image/png").getInputStream()) {
            image = ImageIO.read(bytes);
        }
        // The last sixth of the picture is the hour from the onset on.
        int rush = image.getRGB((int) (68 + 558 * 5.1 / 6), 100) & 0xffffff;
        int before = image.getRGB((int) (68 + 558 * 4.6 / 6), 100) & 0xffffff;
        assertThat(rush).isEqualTo(0x0f6079);
        assertThat(before).isEqualTo(0xf8f9f5);
    }

    @Test
    void a_program_is_told_where_the_picture_is() throws Exception {
        told(this::drawn, Kind.ROBBING);
        assertThat(receiver.taken()
                        .get(0)
                        .json()
                        .get("alerts")
                        .get(0)
                        .get("picture")
                        .asText())
                .isEqualTo("https://line.example/story.png?finding=robbing%7E2026-05-12T11%3A04%3A00Z%7EMill+Race");
    }

    @Test
    void a_low_battery_needs_no_picture() throws Exception {
        assertThat(told(this::drawn, Kind.BATTERY_LOW))
                .singleElement()
                .satisfies(letter -> assertThat(letter.isMimeType("text/plain")).isTrue());
        assertThat(receiver.taken().get(0).json().get("alerts").get(0).has("picture"))
                .isFalse();
    }

    @Test
    void an_artist_that_fails_costs_the_message_nothing_but_its_picture() {
        Artist clumsy = (trap, onset) -> {
            throw new NoClassDefFoundError("no drawing library on this machine");
        };
        assertThat(told(clumsy, Kind.MOVE_IN)).singleElement().satisfies(letter -> {
            assertThat(letter.isMimeType("text/plain")).isTrue();
            assertThat((String) letter.getContent()).contains("What to do: ");
        });
    }

    @Test
    void an_artist_that_dawdles_is_not_waited_for() {
        CountDownLatch never = new CountDownLatch(1);
        Artist slow = (trap, onset) -> {
            try {
                never.await();
            } catch (InterruptedException sentHome) {
                Thread.currentThread().interrupt();
            }
            return Optional.of(new byte[1]);
        };
        Alert alert = new Alert(
                1,
                "t",
                "s",
                Optional.of(TRAP),
                "title",
                "words",
                FindingJson.text(raised(TRAP, Kind.MOVE_IN, ONSET)),
                ONSET);
        try (Pictures pictures = new Pictures(Optional.of(slow), Optional.empty(), Duration.ofMillis(50))) {
            assertThat(pictures.of(alert)).isEmpty();
        }
    }
}
