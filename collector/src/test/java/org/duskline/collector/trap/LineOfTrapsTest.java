package org.duskline.collector.trap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineOfTrapsTest {
    private static final String MILL = feature("Mill Race", "n07", "Europe/Vienna", "both", "[15.4,47.1]");

    private static String feature(String trap, String node, String zone, String fitted, String position) {
        return "{\"type\":\"Feature\",\"geometry\":{\"type\":\"Point\",\"coordinates\":" + position
                + "},\"properties\":{\"trap\":\"" + trap + "\",\"node\":\"" + node + "\",\"zone\":\"" + zone
                + "\",\"fitted\":\"" + fitted + "\"}}";
    }

    private static LineOfTraps parse(String... features) {
        return LineOfTraps.parse(
                "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}", "line.geojson");
    }

    @Test
    void a_line_gives_traps_and_what_hangs_there() {
        LineOfTraps line = parse(MILL, feature("High Field", "esp_1", "Europe/Vienna", "scale", "[15.5,47.2,610]"));
        assertThat(line.traps())
                .containsExactly(
                        new Trap("Mill Race", 47.1, 15.4, ZoneId.of("Europe/Vienna")),
                        new Trap("High Field", 47.2, 15.5, ZoneId.of("Europe/Vienna")));
        Instant spring = Instant.parse("2026-04-01T00:00:00Z");
        assertThat(line.fittingsFrom(spring))
                .contains(new Fitting("esp_1", "High Field", Fitted.SCALE, spring, Instant.MAX));
    }

    @Test
    void a_counter_may_be_described_and_has_the_dead_time_of_the_notes_unless_it_was_measured() {
        String eight = MILL.replace("\"both\"}", "\"both\",\"lanes\":8}");
        assertThat(parse(eight).places().get(0).counter())
                .hasValue(new LaneBlock("n07", Instant.MIN, 8, Duration.ofMillis(89)));
        LineOfTraps measured = parse(MILL.replace("\"both\"}", "\"both\",\"lanes\":6,\"dead-time-ms\":120}"));
        assertThat(measured.places().get(0).counter())
                .hasValue(new LaneBlock("n07", Instant.MIN, 6, Duration.ofMillis(120)));
        assertThat(LineOfTraps.parse(measured.toGeoJson(), "again")).isEqualTo(measured);
        assertThatThrownBy(() -> parse(MILL.replace("\"both\"}", "\"both\",\"dead-time-ms\":120}")))
                .hasMessageContaining("dead-time-ms needs lanes");
        assertThatThrownBy(() -> parse(MILL.replace("\"both\"}", "\"both\",\"lanes\":0}")))
                .hasMessageContaining("1 to 64 lanes");
    }

    @Test
    void what_is_written_reads_back_as_the_same_line(@TempDir Path folder) throws Exception {
        LineOfTraps line =
                parse(MILL, feature("Zum \\\"Lindenhof\\\"", "n-8", "Europe/Vienna", "counter", "[-15.5,-47.2]"));
        Path file = Files.writeString(folder.resolve("line.geojson"), line.toGeoJson());
        assertThat(LineOfTraps.read(file)).isEqualTo(line);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "n 7|Europe/Vienna|both|[15,47]|is no node name",
                "n07|Vienna|both|[15,47]|time zone \"Vienna\" is unknown",
                "n07|Europe/Vienna|all|[15,47]|takes both, counter or scale",
                "n07|Europe/Vienna|both|[15,147]|longitude first",
                "n07|Europe/Vienna|both|[\"15\",47]|[LONGITUDE, LATITUDE]",
            })
    void a_wrong_feature_is_named_with_what_to_do(
            String node, String zone, String fitted, String position, String says) {
        assertThatThrownBy(() -> parse(MILL, feature("High Field", node, zone, fitted, position)))
                .isInstanceOf(LineProblem.class)
                .hasMessageContaining("line.geojson, feature 2 (trap \"High Field\")")
                .hasMessageContaining(says);
    }

    @Test
    void a_feature_without_a_name_is_found_by_its_place() {
        assertThatThrownBy(() -> parse(MILL, "{\"type\":\"Feature\",\"properties\":{}}"))
                .isInstanceOf(LineProblem.class)
                .hasMessageContaining("feature 2")
                .hasMessageContaining("\"trap\" is missing");
    }

    @Test
    void a_trap_or_a_node_named_twice_is_refused() {
        assertThatThrownBy(() -> parse(MILL, MILL)).hasMessageContaining("stands there twice");
        assertThatThrownBy(() -> parse(MILL, feature("High Field", "n07", "Europe/Vienna", "both", "[15,47]")))
                .hasMessageContaining("hangs in two traps");
    }

    @Test
    void another_file_says_what_it_should_be() {
        assertThatThrownBy(() -> LineOfTraps.parse("[1,", "x.json"))
                .isInstanceOf(LineProblem.class)
                .hasMessageContaining("x.json is not JSON")
                .hasMessageContaining("line 1");
        assertThatThrownBy(() -> LineOfTraps.parse("{}", "x.json")).hasMessageContaining("FeatureCollection");
        assertThatThrownBy(() -> LineOfTraps.read(Path.of("no-such-line.geojson")))
                .isInstanceOf(LineProblem.class)
                .hasMessageContaining("no-such-line.geojson");
    }

    @Test
    void a_calibration_weighs_and_refuses_zero_counts_a_kilogram() {
        Instant day = Instant.parse("2026-04-01T00:00:00Z");
        assertThat(new Calibration("n07", day, 8_000, 21_000).weightKg(50_000)).isEqualTo(2.0);
        assertThat(new Calibration("n07", day, 8_000, -21_000).weightKg(-34_000))
                .isEqualTo(2.0);
        assertThatThrownBy(() -> new Calibration("n07", day, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("n07");
    }
}
