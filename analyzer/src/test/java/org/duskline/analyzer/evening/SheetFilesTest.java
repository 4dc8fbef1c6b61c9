package org.duskline.analyzer.evening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import io.jenetics.jpx.GPX;
import java.io.ByteArrayInputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.VAlarm;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.Trigger;
import org.duskline.analyzer.stats.CheckFile;
import org.duskline.analyzer.visit.VisitKind;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** The calendar by RFC 5545 and read back with another library; GPX by its schema; CSV by RFC 4180. */
class SheetFilesTest {
    private static final EveningSheet SHEET = Line.sheet(
            Line.filled("Mill Race, \"upper\"; old", 48.0, 16.0, 0.95),
            Line.filled("A & B <south>", 48.1, 16.2, 0.98),
            Line.filled("Hühnerbründl üüüüüüüüüüüüüüüüüüüüüüüüüüüüüüü 🐝🐝🐝🐝🐝", 48.03, 16.05, 0.96),
            Line.filled("Quarry", 48.05, 16.1, 0.5),
            Line.filled("Ford", 48.02, 16.1, 0.97, Line.visit("Ford", VisitKind.CLOSED, "2026-05-12T19:30:00Z")));

    @Test
    void another_library_reads_the_calendar_and_finds_it_valid() throws Exception {
        Calendar calendar = read(SheetCalendar.of(List.of(SHEET), Duration.ofMinutes(45)));
        assertThat(calendar.validate(true).getEntries()).isEmpty();
        assertThat(events(calendar)).hasSize(4);
    }

    @Test
    void each_event_spans_the_window_and_rings_before_it_is_time_to_leave() throws Exception {
        Calendar calendar = read(SheetCalendar.of(List.of(SHEET), Duration.ofMinutes(45)));
        for (Stop stop : SHEET.round().stops()) {
            VEvent event = events(calendar).stream()
                    .filter(each -> value(each, Property.SUMMARY)
                            .equals("Close " + stop.trap().name()))
                    .findFirst()
                    .orElseThrow();
            assertThat(instant(value(event, Property.DTSTART)))
                    .isEqualTo(seconds(stop.flightEnd().window().opens()));
            assertThat(instant(value(event, Property.DTEND)))
                    .isEqualTo(seconds(stop.flightEnd().window().closes()));
            assertThat(value(event, Property.STATUS)).isEqualTo("CONFIRMED");
            assertThat(value(event, Property.DESCRIPTION))
                    .contains(stop.moveIn().summary());
            VAlarm alarm = event.getAlarms().get(0);
            Trigger trigger = (Trigger) alarm.getRequiredProperty(Property.TRIGGER);
            Instant rings = seconds(stop.flightEnd().window().opens()).plus(Duration.from(trigger.getDuration()));
            Instant leave = SHEET.round().leave().orElseThrow();
            assertThat(Duration.between(rings, leave).minusMinutes(45).abs()).isLessThan(Duration.ofSeconds(2));
            assertThat(value(event, Property.GEO))
                    .isEqualTo(stop.trap().latitude() + ";" + stop.trap().longitude());
        }
    }

    @Test
    void a_doubtful_trap_is_tentative_and_does_not_ring() throws Exception {
        VEvent perhaps = events(read(SheetCalendar.of(List.of(SHEET), Duration.ofMinutes(45)))).stream()
                .filter(each -> value(each, Property.SUMMARY).equals("Perhaps Quarry"))
                .findFirst()
                .orElseThrow();
        assertThat(value(perhaps, Property.STATUS)).isEqualTo("TENTATIVE");
        assertThat(perhaps.getAlarms()).isEmpty();
    }

    @Test
    void the_calendar_is_folded_at_75_octets_and_keeps_its_identities() {
        String feed = SheetCalendar.of(List.of(SHEET), Duration.ofMinutes(45));
        assertThat(feed).contains("\r\n").doesNotContain("\n\n");
        for (String line : feed.split("\r\n")) {
            assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
        }
        assertThat(SheetCalendar.of(List.of(SHEET), Duration.ofMinutes(45))).isEqualTo(feed);
    }

    @Test
    void long_lines_unfold_to_what_they_were() {
        var said = CheckFile.json("10-formats.json").get("icalendar").get("folding_3_1");
        String unfolded = said.get("unfolded").asText() + " " + "übermäßig 🐝 ".repeat(20);
        assertThat(ContentLines.folded(unfolded).replace("\r\n ", "")).isEqualTo(unfolded + "\r\n");
        assertThat(ContentLines.folded("A".repeat(said.get("line_limit_octets").asInt())))
                .isEqualTo("A".repeat(75) + "\r\n");
    }

    @Test
    void the_reading_library_agrees_with_the_standards_own_example() throws Exception {
        Calendar calendar = read(CheckFile.text("10-formats/rfc5545-event-with-alarm.ics"));
        VEvent event = events(calendar).get(0);
        Trigger trigger = (Trigger) event.getAlarms().get(0).getRequiredProperty(Property.TRIGGER);
        Instant first = instant(value(event, Property.DTSTART)).plus(Duration.from(trigger.getDuration()));
        assertThat(first.toString())
                .isEqualTo(CheckFile.json("10-formats.json")
                        .get("icalendar")
                        .get("expected_alarm_instants_of_event_with_alarm")
                        .get(0)
                        .asText());
    }

    @Test
    void the_gpx_file_has_every_trap_and_the_round_from_home_and_back() throws Exception {
        String written = SheetGpx.of(SHEET, Optional.of(Line.HOME));
        GPX gpx = GPX.Reader.DEFAULT.read(new ByteArrayInputStream(written.getBytes(StandardCharsets.UTF_8)));
        assertThat(gpx.getWayPoints()).hasSize(5);
        assertThat(gpx.getRoutes()).hasSize(1);
        assertThat(gpx.getRoutes().get(0).getPoints()).hasSize(5);
        assertThat(gpx.getRoutes().get(0).getPoints().get(0).getName()).contains("Home");
        assertThat(gpx.getWayPoints().stream().map(point -> point.getName().orElseThrow()))
                .contains("A & B <south>");
        assertThat(gpx.getWayPoints().get(0).getLatitude().doubleValue())
                .isCloseTo(SHEET.round().stops().get(0).trap().latitude(), within(1e-9));
    }

    @Test
    void the_gpx_file_keeps_the_order_and_the_ranges_of_its_schema() throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        EveningSheet atTheDateLine = Line.sheet(Line.filled("Edge\u0007", -17, 180, 0.99));
        Document document = factory.newDocumentBuilder()
                .parse(new ByteArrayInputStream(
                        SheetGpx.of(atTheDateLine, Optional.empty()).getBytes(StandardCharsets.UTF_8)));
        Element root = document.getDocumentElement();
        var schema = CheckFile.json("10-formats.json").get("gpx");
        assertThat(root.getNamespaceURI()).isEqualTo(schema.get("namespace").asText());
        assertThat(root.getAttribute("version")).isEqualTo("1.1");
        assertThat(root.getAttribute("creator")).isNotBlank();
        inOrder(root, texts(schema.get("gpx_children_in_order")));
        Element point = (Element) document.getElementsByTagNameNS("*", "wpt").item(0);
        assertThat(Double.parseDouble(point.getAttribute("lon"))).isEqualTo(-180);
        inOrder(point, texts(schema.get("wpt_children_in_order")));
    }

    @Test
    void the_csv_quotes_names_with_commas_and_names_its_units() {
        String csv = SheetCsv.of(SHEET);
        String[] lines = csv.split("\r\n");
        assertThat(lines).hasSize(6);
        assertThat(lines[0]).contains("leg_km_as_the_crow_flies").contains("lift_at_most_kg");
        assertThat(csv).contains("\"Mill Race, \"\"upper\"\"; old\",close,48.0,16.0,");
        assertThat(csv).contains("Quarry,doubtful").contains("Ford,closed");
    }

    @Test
    void the_text_names_times_distances_reasons_and_cautions() {
        String text = SheetText.of(SHEET);
        assertThat(text)
                .contains("Tonight, 2026-05-12")
                .contains("as the crow flies (roads are longer)")
                .contains("flight ends: civil dusk")
                .contains("Lift 9.6 kg")
                .contains("Not sure: Quarry, 50 %")
                .contains("Closed already, to be fetched")
                .contains(Caution.LADDER.said())
                .contains("geo:48,16\n");
        assertThat(text.lines().count()).isLessThan(66);
    }

    private static void inOrder(Element element, List<String> allowed) {
        int reached = 0;
        for (Node child = element.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element) {
                int at = allowed.indexOf(child.getLocalName());
                assertThat(at).as(child.getLocalName()).isGreaterThanOrEqualTo(reached);
                reached = at;
            }
        }
    }

    private static List<String> texts(com.fasterxml.jackson.databind.JsonNode array) {
        List<String> texts = new ArrayList<>();
        array.forEach(each -> texts.add(each.asText()));
        return texts;
    }

    private static Calendar read(String text) throws Exception {
        return new CalendarBuilder().build(new StringReader(text));
    }

    private static List<VEvent> events(Calendar calendar) {
        return calendar.getComponents("VEVENT");
    }

    private static String value(VEvent event, String property) {
        return event.getRequiredProperty(property).getValue();
    }

    private static Instant instant(String basic) {
        return Instant.parse(basic.replaceFirst("(....)(..)(..)T(..)(..)(..)Z", "$1-$2-$3T$4:$5:$6Z"));
    }

    private static Instant seconds(Instant time) {
        return Instant.ofEpochSecond(time.getEpochSecond());
    }
}
