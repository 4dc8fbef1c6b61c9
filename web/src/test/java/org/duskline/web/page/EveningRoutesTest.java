package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Component;
import net.fortuna.ical4j.model.component.VEvent;
import org.duskline.web.page.InventedLine.Mood;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

/** The evening for calendars and navigation, the page for a phone at the trap, and what makes the pages installable. */
class EveningRoutesTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final Pattern FEED = Pattern.compile("href=\"(/feeds/[^\"]+/evening\\.ics)\"");

    private Pages pages;
    private int port;
    private PlainBrowser keeper;

    @BeforeEach
    void open() {
        pages = InventedParts.pages(new InventedLine(Mood.BUSY));
        port = pages.start("127.0.0.1", 0);
        keeper = new PlainBrowser(port);
    }

    @AfterEach
    void close() {
        pages.stop();
    }

    /** Read and validated by ical4j, which did not write it. */
    @Test
    void the_calendar_feed_is_valid_for_whoever_knows_its_address_and_rings_before_setting_out() throws Exception {
        Matcher address = FEED.matcher(keeper.get("/").body());
        assertThat(address.find()).isTrue();

        HttpResponse<String> feed = new PlainBrowser(port).get(address.group(1));

        assertThat(feed.headers().firstValue("Content-Type")).contains("text/calendar; charset=utf-8");
        Calendar calendar = new CalendarBuilder().build(new StringReader(feed.body()));
        assertThat(calendar.validate().hasErrors()).isFalse();
        assertThat(calendar.<VEvent>getComponents(Component.VEVENT))
                .hasSize(2)
                .allSatisfy(event -> assertThat(event.getAlarms()).hasSize(1));
        assertThat(feed.body()).contains("SUMMARY:Close Alder Sluice");
    }

    @Test
    void a_feeds_address_that_somebody_made_up_shows_nothing() throws Exception {
        HttpResponse<String> feed = keeper.get("/feeds/0123456789abcdef/evening.ics");
        assertThat(feed.statusCode()).isEqualTo(404);
        assertThat(feed.body()).doesNotContain("Alder Sluice");
    }

    @Test
    void the_route_for_navigation_visits_the_traps_in_the_sheets_order() throws Exception {
        HttpResponse<String> gpx = keeper.get("/api/tonight.gpx");
        Document document = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(gpx.body().getBytes(StandardCharsets.UTF_8)));
        assertThat(document.getDocumentElement().getAttribute("version")).isEqualTo("1.1");
        assertThat(document.getElementsByTagName("wpt").getLength()).isEqualTo(2);
        assertThat(document.getElementsByTagName("rtept").getLength()).isGreaterThanOrEqualTo(2);
        assertThat(keeper.get("/api/tonight.csv").body())
                .startsWith("order,trap,state")
                .contains("Alder Sluice");
        assertThat(keeper.get("/api/tonight.txt").body())
                .contains("To close: 2")
                .contains("Bring:");
    }

    @Test
    void the_sheet_says_how_long_it_takes_in_all_and_what_there_is_to_lift() throws Exception {
        assertThat(keeper.get("/").body())
                .contains("in all at your speed")
                .contains("10.8 kg (box 9.4 + swarm 1.4), at most 11.0")
                .contains("as the crow flies")
                .contains("/traps/Alder%20Sluice/closing")
                .contains("Home again");
    }

    @Test
    void at_the_trap_the_phone_says_wait_while_bees_still_fly() throws Exception {
        assertThat(keeper.get("/traps/Tithe%20Loft/closing").body())
                .contains("Still flying")
                .contains("6 a minute pass the entrance. Wait until they are in.")
                .contains("Yes, closed just now");
    }

    @Test
    void at_the_trap_the_phone_says_close_once_no_bee_has_passed_for_long_enough() throws Exception {
        String page = keeper.get("/traps/Alder%20Sluice/closing").body();
        assertThat(page)
                .contains("Close now")
                .contains("No bee has passed for 12 min")
                .contains("No lifting from a ladder")
                .contains("Close with mesh, never solid");
        JsonNode told =
                JSON.readTree(keeper.get("/api/traps/Alder%20Sluice/closing").body());
        assertThat(told.get("closeNow").asBoolean()).isTrue();
    }

    @Test
    void without_a_counter_the_phone_goes_by_sun_and_warmth_and_says_so() throws Exception {
        assertThat(keeper.get("/traps/Three%20Stiles/closing").body())
                .contains("Not yet")
                .contains("Nothing counts bees here")
                .contains("watch the entrance for ten minutes yourself");
        assertThat(keeper.get("/traps/Hollow%20Gate/closing").body())
                .contains("Look, then close")
                .contains("The node was not heard for 9 h");
    }

    /** Names and members as in the W3C's Web Application Manifest. */
    @Test
    void the_pages_can_be_installed_with_an_icon_of_the_stated_size() throws Exception {
        HttpResponse<String> answer = new PlainBrowser(port).get("/manifest.webmanifest");
        assertThat(answer.headers().firstValue("Content-Type")).contains("application/manifest+json");
        JsonNode manifest = JSON.readTree(answer.body());
        assertThat(manifest.get("display").asText()).isEqualTo("standalone");
        for (JsonNode icon : manifest.get("icons")) {
            BufferedImage image = ImageIO.read(
                    URI.create("http://127.0.0.1:" + port + icon.get("src").asText())
                            .toURL());
            assertThat(image.getWidth() + "x" + image.getHeight())
                    .isEqualTo(icon.get("sizes").asText());
        }
    }
}
