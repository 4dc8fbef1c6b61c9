package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.duskline.analyzer.visit.AfterCollecting;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Store;
import org.duskline.web.page.InventedLine.Mood;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Writing down what was done at a trap, in a browser without scripts and as a program does. */
class VisitPagesTest {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String CLOSED_FORM = "/traps/Alder%20Sluice/visits/new?what=closed";
    private static final String WRITE = "/traps/Alder%20Sluice/visits";

    @TempDir
    Path folder;

    private Store store;
    private VisitLog visits;
    private Pages pages;
    private PlainBrowser keeper;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("line.db"));
        visits = VisitLog.open(store);
        pages = InventedParts.pages(new InventedLine(Mood.BUSY), visits);
        keeper = new PlainBrowser(pages.start("127.0.0.1", 0));
    }

    @AfterEach
    void close() {
        pages.stop();
        store.close();
    }

    @Test
    void two_taps_on_the_traps_page_write_a_closing_down() throws Exception {
        assertThat(keeper.get("/traps/Alder%20Sluice").body()).contains("href=\"" + CLOSED_FORM + "\"");
        assertThat(keeper.get(CLOSED_FORM).body()).contains("Closed, just now");

        HttpResponse<String> answer = keeper.fill(CLOSED_FORM, WRITE, Map.of("what", "closed"));

        assertThat(answer.statusCode()).isEqualTo(303);
        Visit visit = only().visit();
        assertThat(visit.kind()).isEqualTo(VisitKind.CLOSED);
        assertThat(visit.at()).isEqualTo(InventedLine.NOW);
        assertThat(visit.by()).isEqualTo("keeper");
        assertThat(keeper.get(PlainBrowser.leadsTo(answer)).body())
                .contains("Bees that still pass, heat in the box")
                .contains("visits/new?what=collected");
    }

    @Test
    void a_collection_keeps_its_weight_and_place_and_shows_what_to_see_to_at_home() throws Exception {
        HttpResponse<String> answer = keeper.fill(
                "/traps/Alder%20Sluice/visits/new?what=collected",
                WRITE,
                Map.of("what", "collected", "massKg", "1,46", "whereTo", "the far orchard", "at", "2026-05-12T18:40"));

        Visit visit = only().visit();
        assertThat(visit.massKg()).isEqualTo(1.46);
        assertThat(visit.whereTo()).contains("the far orchard");
        assertThat(visit.at()).as("18:40 by the trap's own clock").isEqualTo("2026-05-12T16:40:00Z");
        String page = keeper.get(PlainBrowser.leadsTo(answer)).body();
        for (AfterCollecting thing : AfterCollecting.values()) {
            assertThat(page).contains(thing.said().replace("'", "&#39;").substring(0, 20));
        }
        assertThat(page).contains("Local rules and licensed practice come first");
    }

    @Test
    void a_correction_stands_and_what_was_written_before_is_still_read() throws Exception {
        keeper.fill(CLOSED_FORM, WRITE, Map.of("what", "closed", "note", "mesh, two straps"));
        String address = "/visits/" + only().id();

        keeper.fill(address, address, Map.of("what", "looked", "at", "2026-05-12T18:05", "note", "bees bearding"));

        assertThat(only().visit().kind()).isEqualTo(VisitKind.LOOKED);
        assertThat(keeper.get(address).body())
                .contains("Looked at")
                .contains("bees bearding")
                .contains("mesh, two straps");
    }

    @Test
    void a_visit_that_never_was_no_longer_counts_and_is_still_told() throws Exception {
        keeper.fill(CLOSED_FORM, WRITE, Map.of("what", "closed"));
        String address = "/visits/" + only().id();

        keeper.fill(address, address + "/strike", Map.of());

        assertThat(visits.all()).isEmpty();
        assertThat(keeper.get(address).body()).contains("Struck out").contains("said that it never was");
    }

    @Test
    void a_weight_that_is_none_is_asked_for_again_and_nothing_typed_is_lost() throws Exception {
        HttpResponse<String> answer = keeper.fill(
                CLOSED_FORM, WRITE, Map.of("what", "collected", "massKg", "heavy", "whereTo", "the far orchard"));
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(answer.body()).contains("no weight of a swarm").contains("value=\"the far orchard\"");
        assertThat(visits.all()).isEmpty();
    }

    @Test
    void what_lies_ahead_is_no_visit_yet() throws Exception {
        HttpResponse<String> answer =
                keeper.fill(CLOSED_FORM, WRITE, Map.of("what", "closed", "at", "2026-05-12T23:40"));
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(answer.body()).contains("lies ahead");
    }

    @Test
    void a_form_that_did_not_come_from_a_page_of_ours_writes_nothing() throws Exception {
        keeper.get("/");
        assertThat(keeper.post(WRITE, Map.of("what", "closed")).statusCode()).isEqualTo(403);
        assertThat(keeper.postJson("/api/visits", "{\"trap\":\"Alder Sluice\",\"what\":\"closed\"}", Map.of())
                        .statusCode())
                .isEqualTo(403);
        assertThat(visits.all()).isEmpty();
    }

    @Test
    void a_program_that_sends_a_visit_twice_writes_it_once() throws Exception {
        Map<String, String> token = Map.of("Duskline-Token", keeper.token(CLOSED_FORM));
        String body = "{\"id\":\"phone-0001\",\"trap\":\"Alder Sluice\",\"what\":\"closed\",\"agoSeconds\":600}";

        HttpResponse<String> first = keeper.postJson("/api/visits", body, token);
        HttpResponse<String> second = keeper.postJson("/api/visits", body, token);

        assertThat(List.of(first.statusCode(), second.statusCode())).containsExactly(201, 200);
        assertThat(only().visit().at()).isEqualTo(InventedLine.NOW.minusSeconds(600));
        JsonNode told = JSON.readTree(second.body());
        assertThat(told.get("what").asText()).isEqualTo("closed");
        assertThat(JSON.readTree(
                        keeper.get("/api/visits/" + told.get("number").asLong()).body()))
                .hasSize(1);
    }

    @Test
    void a_program_is_told_what_is_wrong_with_its_visit() throws Exception {
        Map<String, String> token = Map.of("Duskline-Token", keeper.token(CLOSED_FORM));
        HttpResponse<String> answer =
                keeper.postJson("/api/visits", "{\"trap\":\"Alder Sluice\",\"what\":\"eaten\"}", token);
        assertThat(answer.statusCode()).isEqualTo(400);
        assertThat(JSON.readTree(answer.body()).get("detail").asText())
                .contains("\"eaten\" is nothing that is done at a trap")
                .contains("taken-down");
        assertThat(keeper.postJson("/api/visits", "{\"trap\":\"Nowhere\",\"what\":\"closed\"}", token)
                        .statusCode())
                .isEqualTo(404);
    }

    private KeptVisit only() {
        assertThat(visits.all()).hasSize(1);
        return visits.all().get(0);
    }
}
