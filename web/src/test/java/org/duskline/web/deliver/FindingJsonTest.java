package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.OffsetDateTime;
import java.util.List;
import org.duskline.analyzer.finding.Stage;
import org.junit.jupiter.api.Test;

class FindingJsonTest {
    @Test
    void another_program_finds_the_keys_of_the_wire_contract_on_one_line() throws Exception {
        String text = FindingJson.text(InventedFinding.moveIn(Stage.RAISED));
        assertThat(text).doesNotContain("\n");
        JsonNode read = new ObjectMapper().readTree(text);
        assertThat(read.path("trap").asText()).isEqualTo("Mill Race");
        assertThat(read.path("node").asText()).isEqualTo("n07");
        assertThat(read.path("kind").asText()).isEqualTo("move-in");
        assertThat(read.path("onset").asText()).isEqualTo("2026-05-12T13:04:00Z");
        assertThat(OffsetDateTime.parse(read.path("raised").asText()).toEpochSecond())
                .isEqualTo(1778591524);
        assertThat(read.path("stage").asText()).isEqualTo("raised");
        assertThat(read.path("probability").asDouble()).isEqualTo(0.9876);
        assertThat(read.path("size").path("bees").asInt()).isEqualTo(11_000);
        assertThat(List.copyOf(read.path("rivals").properties()).get(0).getKey())
                .isEqualTo("swarm");
    }

    @Test
    void what_is_not_a_number_is_left_out_instead_of_breaking_the_line() throws Exception {
        JsonNode evidence = new ObjectMapper()
                .readTree(FindingJson.text(InventedFinding.moveIn(Stage.RAISED)))
                .path("evidence");
        assertThat(evidence.get(0).path("logOdds").asDouble()).isEqualTo(4.2);
        assertThat(evidence.get(1).has("logOdds")).isFalse();
    }
}
