package org.duskline.web.app;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.StreamSupport;
import org.duskline.analyzer.season.Level;
import org.duskline.analyzer.season.SeasonFiles;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Other thresholds, tried from a terminal over an invented season of three traps. */
class ReplayAndTuneTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    static Path folder;

    @BeforeAll
    static void a_season_is_imported() throws IOException {
        SeasonFiles.write(folder, 2, Level.TYPICAL, 30, 3);
        Session.of(
                "import",
                "--database",
                database(),
                "--line",
                folder.resolve("line.geojson").toString(),
                folder.resolve("capture.jsonl.gz").toString());
    }

    @Test
    void thresholds_that_hear_nothing_lose_the_move_ins_and_say_so_in_words_and_in_json() throws Exception {
        Path deaf = thresholds("{\"moveInOdds\": 100000, \"smallestSwarmKg\": 3}");
        Session table = replay(deaf, "--format", "table");
        assertThat(table.exit()).isEqualTo(Exit.DONE);
        assertThat(table.out())
                .containsPattern("lost +unanswered +move-in")
                .contains("Real swarms missed 0", "Expected now:", "Expected otherwise:");

        JsonNode whole = JSON.readTree(replay(deaf, "--format", "json").out());
        assertThat(StreamSupport.stream(whole.get("differences").spliterator(), false))
                .anySatisfy(one -> {
                    assertThat(one.get("change").asText()).isEqualTo("lost");
                    assertThat(one.get("kind").asText()).isEqualTo("move-in");
                });
        assertThat(whole.get("now").get("quietDays").asInt()).isPositive();
    }

    @Test
    void a_stretch_before_the_season_tells_no_difference() throws Exception {
        Session session = replay(thresholds("{\"moveInOdds\": 400}"), "--to", "2001-01-01");
        assertThat(session.exit()).isEqualTo(Exit.DONE);
        assertThat(session.out()).doesNotContain("move-in").contains("Real swarms missed 0, later 0");
    }

    @Test
    void a_mistyped_threshold_is_named_with_those_that_there_are() throws Exception {
        Session session = replay(thresholds("{\"moveinodds\": 40}"));
        assertThat(session.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(session.err())
                .contains("\"moveinodds\" is no threshold", "moveInOdds", "smallestSwarmKg")
                .doesNotContain("\tat ");
    }

    @Test
    void without_answers_the_search_admits_that_it_cannot_tell_and_prints_what_holds() throws Exception {
        Session session = Session.of("tune", "--database", database());
        assertThat(session.exit()).isEqualTo(Exit.DONE);
        assertThat(session.err()).contains("The data do not support a change: 0 answers");
        assertThat(JSON.readTree(session.out()).get("moveInOdds").asDouble()).isEqualTo(20);
    }

    @Test
    void a_price_below_zero_and_a_trap_that_is_not_there_are_refused() {
        assertThat(Session.of("tune", "--database", database(), "--missed-swarm", "-1")
                        .err())
                .contains("A price must be 0 or more");
        assertThat(Session.of("tune", "--database", database(), "--trap", "Nowhere")
                        .err())
                .contains("no trap named \"Nowhere\"");
    }

    @Test
    void a_terminal_says_how_near_a_day_came_to_each_kind_and_what_held_it_back() throws Exception {
        JsonNode moveIn = Session.of("findings", "--database", database())
                .out()
                .lines()
                .map(ReplayAndTuneTest::read)
                .filter(finding -> finding.get("kind").asText().equals("move-in"))
                .findFirst()
                .orElseThrow();
        Instant raised = Instant.parse(moveIn.get("raised").asText());
        Session told = why(moveIn.get("trap").asText(), raised.minus(Duration.ofHours(12)), raised.plusSeconds(7200));
        assertThat(told.exit()).as(told.err()).isEqualTo(Exit.DONE);
        assertThat(told.out())
                .contains("move-in: nearest at", "(told from 20 to 1 on)", "Nothing: it was told.")
                .contains("scouting", "robbing", "departure");

        Session before = why(
                moveIn.get("trap").asText(), raised.minus(Duration.ofDays(900)), raised.minus(Duration.ofDays(899)));
        assertThat(before.out()).contains("There were no samples");
    }

    @Test
    void nobody_is_told_why_about_a_month_at_once_or_about_a_trap_that_is_not_there() {
        Instant day = Instant.parse("2026-05-12T00:00:00Z");
        assertThat(why("Nowhere", day, day.plusSeconds(3600)).err()).contains("no trap named \"Nowhere\"");
        String trap = read(Session.of("findings", "--database", database())
                        .out()
                        .lines()
                        .findFirst()
                        .orElseThrow())
                .get("trap")
                .asText();
        Session month = why(trap, day, day.plus(Duration.ofDays(30)));
        assertThat(month.exit()).isEqualTo(Exit.ASKED_WRONGLY);
        assertThat(month.err()).contains("at most 7 days");
    }

    private static Session why(String trap, Instant from, Instant to) {
        return Session.of(
                "why", "--database", database(), "--trap", trap, "--from", from.toString(), "--to", to.toString());
    }

    private static JsonNode read(String line) {
        try {
            return JSON.readTree(line);
        } catch (IOException notJson) {
            throw new UncheckedIOException(notJson);
        }
    }

    private static Session replay(Path thresholds, String... options) {
        String[] arguments = new String[options.length + 5];
        arguments[0] = "replay";
        arguments[1] = "--database";
        arguments[2] = database();
        arguments[3] = "--thresholds";
        arguments[4] = thresholds.toString();
        System.arraycopy(options, 0, arguments, 5, options.length);
        return Session.of(arguments);
    }

    private static Path thresholds(String json) throws IOException {
        return Files.writeString(folder.resolve("thresholds.json"), json);
    }

    private static String database() {
        return folder.resolve("duskline.db").toString();
    }
}
