package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.duskline.web.page.InventedLine.Mood;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PagesTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final HttpClient client = HttpClient.newHttpClient();
    private Pages pages;
    private int port;

    @AfterEach
    void stop() {
        if (pages != null) {
            pages.stop();
        }
    }

    @Test
    void tonight_names_the_traps_to_close_the_window_why_and_how_sure() throws Exception {
        start(Mood.BUSY);
        assertThat(get("/").body())
                .contains("Two traps to close tonight")
                .contains("Alder Sluice")
                .contains("civil dusk")
                .contains("as the crow flies, roads are longer")
                .contains("+1.42 kg in 22 min (threshold 0.60)")
                .contains("as good as certain")
                .contains("99 %")
                .contains("Local law, licensed practice and the landowner's word come before anything");
    }

    @Test
    void a_trap_that_was_never_heard_says_so_and_shows_no_zero() throws Exception {
        start(Mood.BUSY);
        String line = get("/line").body();
        String row = line.substring(line.indexOf("trap-Long%20Pit"));
        row = row.substring(0, row.indexOf("</li>"));
        assertThat(row).contains("never heard").contains("waits for its first sample");
        assertThat(row).doesNotContain(">0<").doesNotContain("NaN");
    }

    @ParameterizedTest
    @EnumSource(
            value = Mood.class,
            names = {"BUSY", "NO_TRAP", "NO_DATA", "BROKER_DOWN"})
    void no_page_shows_a_number_that_is_none(Mood mood) throws Exception {
        start(mood);
        for (String page : List.of("/", "/line", "/alerts")) {
            assertThat(get(page).statusCode()).isEqualTo(200);
            assertThat(get(page).body())
                    .doesNotContain("NaN")
                    .doesNotContain("Optional")
                    .doesNotContain("null");
        }
    }

    @Test
    void a_line_without_a_trap_says_how_to_begin() throws Exception {
        start(Mood.NO_TRAP);
        assertThat(get("/").body()).contains("No trap on the line yet").contains("Hang a node in a trap");
        assertThat(get("/line").body()).contains("--line line.geojson");
    }

    @Test
    void a_broker_that_is_down_is_told_on_every_page_with_its_address() throws Exception {
        start(Mood.BROKER_DOWN);
        for (String page : List.of("/", "/line", "/alerts", "/traps/Alder%20Sluice")) {
            assertThat(get(page).body()).contains("The broker doesn’t answer").contains("mqtt://localhost:1883");
        }
    }

    @Test
    void a_database_that_can_not_be_read_gives_a_page_with_what_where_and_what_next() throws Exception {
        start(Mood.DATABASE_BROKEN);
        HttpResponse<String> page = get("/line");
        assertThat(page.statusCode()).isEqualTo(503);
        assertThat(page.body())
                .contains("The records can’t be read just now")
                .contains("duskline.db")
                .contains("doctor");
        HttpResponse<String> answer = get("/api/line");
        assertThat(answer.headers().firstValue("Content-Type"))
                .hasValueSatisfying(type -> assertThat(type).startsWith("application/problem+json"));
        assertThat(JSON.readTree(answer.body()).get("detail").asText()).contains("page 4711");
    }

    @Test
    void an_unknown_trap_and_an_unknown_page_are_404_in_words() throws Exception {
        start(Mood.BUSY);
        assertThat(get("/traps/Nowhere").statusCode()).isEqualTo(404);
        assertThat(get("/traps/Nowhere").body()).contains("no trap named \"Nowhere\"");
        assertThat(get("/nothing").statusCode()).isEqualTo(404);
        assertThat(get("/nothing").body()).contains("There is no such page");
        assertThat(JSON.readTree(get("/api/nothing").body()).get("status").asInt())
                .isEqualTo(404);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "from=2026-05-12T00:00:00Z",
                "from=yesterday&until=today",
                "from=2026-05-12T10:00:00Z&until=2026-05-12T09:00:00Z",
                "from=2020-01-01T00:00:00Z&until=2026-01-01T00:00:00Z",
                "span=fortnight",
                "columns=0",
                "columns=many"
            })
    void a_view_that_makes_no_sense_is_refused_with_how_to_write_it(String query) throws Exception {
        start(Mood.BUSY);
        HttpResponse<String> answer = get("/api/traps/Alder%20Sluice/curve?" + query);
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(JSON.readTree(answer.body()).get("detail").asText()).hasSizeGreaterThan(20);
    }

    @Test
    void no_page_carries_an_inline_script_a_style_or_another_host() throws Exception {
        start(Mood.BUSY);
        for (String page :
                List.of("/", "/line", "/alerts", "/traps/Alder%20Sluice", "/traps/Nowhere", "/node/n10", "/node/n31")) {
            HttpResponse<String> answer = get(page);
            assertThat(answer.headers().firstValue("Content-Security-Policy"))
                    .hasValueSatisfying(policy ->
                            assertThat(policy).contains("default-src 'none'").doesNotContain("unsafe"));
            assertThat(answer.body())
                    .doesNotContainPattern("<script(?![^>]*\\ssrc=)")
                    .doesNotContainPattern("<style")
                    .doesNotContainPattern("\\sstyle=")
                    .doesNotContainPattern("\\son[a-z]+=")
                    .doesNotContainPattern("(src|href)=\"(https?:)?//");
        }
    }

    @Test
    void every_colour_stands_in_the_one_file_of_tokens_and_both_darks_are_the_same() throws Exception {
        start(Mood.BUSY);
        for (String sheet : List.of("notebook.css", "curve.css", "print.css")) {
            assertThat(get("/assets/" + sheet).body()).doesNotContainPattern("#[0-9a-fA-F]{3,8}\\b|rgb\\(|hsl\\(");
        }
        String tokens = get("/assets/tokens.css").body();
        List<String> darks = Pattern.compile("\\{\\s*color-scheme: dark;([^}]*)}")
                .matcher(tokens)
                .results()
                .map(MatchResult::group)
                .map(block -> block.replaceAll("\\s+", " "))
                .toList();
        assertThat(darks).hasSize(2);
        assertThat(darks.get(0)).isEqualTo(darks.get(1));
    }

    @Test
    void what_a_node_or_a_keeper_wrote_can_not_become_markup() throws Exception {
        start(Mood.BUSY);
        assertThat(get("/traps/%3Cscript%3Ealert(1)%3C%2Fscript%3E").body()).doesNotContain("<script>alert");
        assertThat(get("/traps/~PGI-").body()).contains("&lt;b&gt;").doesNotContain("named \"<b>");
    }

    @Test
    void the_curve_of_a_day_holds_its_rush_its_gap_and_its_night() throws Exception {
        start(Mood.BUSY);
        JsonNode curve = JSON.readTree(
                get("/api/traps/Alder%20Sluice/curve?span=day&columns=900").body());
        double most = numbers(curve.get("in").get("high")).stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElseThrow();
        assertThat(most).isGreaterThan(150);
        assertThat(curve.get("nights")).hasSize(1);
        assertThat(StreamSupport.stream(curve.get("weight").get("high").spliterator(), false)
                        .filter(JsonNode::isNull))
                .as("the two hours out of reach are one gap")
                .hasSize(1);
        assertThat(curve.get("in").get("high").size())
                .isEqualTo(curve.get("step").size());
    }

    @Test
    void a_season_stays_small_and_keeps_the_rush_of_its_one_swarm() throws Exception {
        start(Mood.BUSY);
        HttpResponse<String> answer = get("/api/traps/Alder%20Sluice/curve?span=season&columns=1000");
        JsonNode season = JSON.readTree(answer.body());
        assertThat(season.get("points").asInt()).isGreaterThan(28_000);
        assertThat(answer.body().getBytes(StandardCharsets.UTF_8).length).isLessThan(60_000);
        assertThat(numbers(season.get("in").get("high"))).anyMatch(perMinute -> perMinute > 150);
    }

    @Test
    void the_curve_as_csv_has_its_units_in_the_header_and_leaves_out_what_was_not_measured() throws Exception {
        start(Mood.BUSY);
        String csv = get("/api/traps/Three%20Stiles/curve.csv?from=2026-05-12T08:00:00Z&until=2026-05-12T09:00:00Z")
                .body();
        List<String> lines = csv.lines().toList();
        assertThat(lines.get(0))
                .isEqualTo(
                        "time,counted over [min],in [1/min],out [1/min],weight [kg],weight at one temperature [kg],box [Cel],cell [Cel]");
        assertThat(lines).hasSize(31);
        assertThat(lines.get(1)).matches("2026-05-12T08:00:00Z,,,,9\\.\\d+,,\\d+\\.\\d+,\\d+\\.\\d+");
    }

    @Test
    void the_api_tells_the_same_as_the_pages() throws Exception {
        start(Mood.BUSY);
        JsonNode tonight = JSON.readTree(get("/api/tonight").body());
        assertThat(tonight.get("close").findValuesAsText("number")).containsExactly("1", "2");
        assertThat(StreamSupport.stream(tonight.get("close").spliterator(), false))
                .filteredOn(stop -> stop.get("trap").asText().equals("Tithe Loft"))
                .singleElement()
                .satisfies(stop -> assertThat(stop.has("liftKg"))
                        .as("nobody weighed that box")
                        .isFalse());
        Instant opens = Instant.parse(tonight.get("close").get(0).get("opens").asText());
        assertThat(tonight.get("close").get(0).get("best").asText())
                .isEqualTo(opens.plus(Duration.ofMinutes(30)).toString());
        assertThat(get("/").body()).contains(Words.clock(opens.plus(Duration.ofMinutes(30)), InventedLine.ZONE));
        JsonNode line = JSON.readTree(get("/api/line").body());
        assertThat(line.get("traps")).hasSize(10);
        assertThat(line.get("looseNodes").get(0).get("node").asText()).isEqualTo("n31");
        JsonNode trap = JSON.readTree(get("/api/traps/Alder%20Sluice").body());
        assertThat(trap.get("findings").get(0).get("kind").asText()).isEqualTo("move-in");
        assertThat(JSON.readTree(get("/api/findings?limit=2").body())).hasSize(2);
    }

    @Test
    void every_route_of_the_api_is_described_and_nothing_else() throws Exception {
        start(Mood.BUSY);
        List<String> described = new ArrayList<>();
        JSON.readTree(get("/api/openapi.json").body()).get("paths").fieldNames().forEachRemaining(described::add);
        described.removeIf(path -> path.startsWith("/api/thresholds"));
        assertThat(pages.paths())
                .filteredOn(path -> path.startsWith("/api/"))
                .containsExactlyInAnyOrderElementsOf(described);
        for (String path : described) {
            String filled = path.replace("{trap}", "Tern%20Bank")
                    .replace("{node}", "n10")
                    .replace("{visit}", "1")
                    .replace("/api/answers", "/api" + Links.answer(InventedFindings.swarm()))
                    .replaceFirst(
                            "/api/story(.txt)?$",
                            "/api/story$1"
                                    + Links.storyPage(InventedFindings.swarm()).substring("/story".length()));
            assertThat(get(filled).statusCode()).as(path).isEqualTo(200);
        }
    }

    @Test
    void an_open_page_that_asks_for_news_gets_only_the_part_that_changes() throws Exception {
        start(Mood.BUSY);
        HttpRequest request =
                HttpRequest.newBuilder(at("/line")).header("HX-Request", "true").build();
        HttpResponse<String> part = client.send(request, HttpResponse.BodyHandlers.ofString());
        assertThat(part.body()).contains("Alder Sluice").doesNotContain("<html");
        assertThat(part.headers().firstValue("Vary")).hasValue("HX-Request");
    }

    private void start(Mood mood) {
        pages = InventedParts.pages(new InventedLine(mood));
        port = pages.start("127.0.0.1", 0);
    }

    private HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(at(path)).build(), HttpResponse.BodyHandlers.ofString());
    }

    private URI at(String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    private static List<Double> numbers(JsonNode values) {
        return StreamSupport.stream(values.spliterator(), false)
                .filter(JsonNode::isNumber)
                .map(JsonNode::asDouble)
                .toList();
    }
}
