package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Message;
import org.duskline.web.page.InventedLine.Mood;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.Habits;
import org.duskline.web.page.board.StoreWatchboard;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is to be done at a trap stands on its own page, and not on another's. */
class ChoresAtATrapTest {
    private static final Instant EVENING = Instant.parse("2026-05-12T17:00:00Z");

    @TempDir
    Path folder;

    private Store store;
    private VisitLog visits;
    private StoreWatchboard board;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("line.db"));
        visits = VisitLog.open(store);
        board = new StoreWatchboard(
                store,
                new FindingLog(store),
                visits,
                AnswerLog.open(store),
                trap -> Condition.QUIET,
                () -> new BrokerLink(true, EVENING, "mqtt://localhost:1883"),
                Habits.USUAL,
                () -> EVENING);
        for (String name : List.of("Old Kiln", "Tern Bank")) {
            store.line().put(new Trap(name, 46.9, 15.1, InventedLine.ZONE));
        }
        store.line().put(new Fitting("n1", "Old Kiln", Fitted.BOTH, Instant.MIN, Instant.MAX));
        store.line().put(new Fitting("n2", "Tern Bank", Fitted.BOTH, Instant.MIN, Instant.MAX));
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void old_bait_a_trap_nobody_looked_at_and_a_silent_node_are_told_on_the_page_of_that_trap() {
        visit("Old Kiln", VisitKind.SET, Duration.ofDays(60));
        visit("Old Kiln", VisitKind.BAITED, Duration.ofDays(45));
        hear("n1", EVENING.minus(Duration.ofDays(3)), 3.9);
        visit("Tern Bank", VisitKind.SET, Duration.ofDays(1));
        hear("n2", EVENING.minusSeconds(120), 3.9);

        assertThat(due("Old Kiln"))
                .hasSize(3)
                .anySatisfy(said -> assertThat(said).startsWith("Bait is 45 days old"))
                .anySatisfy(said -> assertThat(said).startsWith("Nobody has looked at it for 45 days"))
                .anySatisfy(said -> assertThat(said).startsWith("Its node was last heard"));
        assertThat(due("Tern Bank")).isEmpty();
    }

    @Test
    void a_battery_that_goes_down_is_told_with_the_days_it_has_left() {
        List<Message> heard = new ArrayList<>();
        for (int hours = 20 * 24; hours >= 0; hours -= 4) {
            heard.add(message("n1", EVENING.minus(Duration.ofHours(hours)), 3.50 + 0.001 * hours));
        }
        new Collector(store).take(heard);

        assertThat(due("Old Kiln"))
                .singleElement()
                .satisfies(said -> assertThat(said).matches("Battery at 3\\.50 V, empty in about \\d+ days .*"));
    }

    @Test
    void a_closed_swarm_that_nobody_has_fetched_is_told_on_its_page() {
        visit("Old Kiln", VisitKind.SET, Duration.ofDays(2));
        visit("Old Kiln", VisitKind.CLOSED, Duration.ofHours(40));
        hear("n1", EVENING.minusSeconds(120), 3.9);

        assertThat(due("Old Kiln"))
                .singleElement()
                .satisfies(said -> assertThat(said).startsWith("Closed for 40 hours and not fetched"));
    }

    @Test
    void the_page_shows_it_and_the_page_of_a_trap_with_nothing_due_has_no_such_heading() throws Exception {
        Pages pages = InventedParts.pages(new InventedLine(Mood.BUSY));
        try {
            PlainBrowser keeper = new PlainBrowser(pages.start("127.0.0.1", 0));
            assertThat(keeper.get("/traps/Weir%20House").body())
                    .contains("To be done here")
                    .contains("Bait is 17 days old; you renew it every 14 days.");
            assertThat(keeper.get("/traps/Tern%20Bank").body()).doesNotContain("To be done here");
            assertThat(keeper.get("/api/traps/Weir%20House").body()).contains("\"due\":[\"Bait is 17 days old");
        } finally {
            pages.stop();
        }
    }

    private List<String> due(String trap) {
        return board.trap(trap).orElseThrow().due();
    }

    private void visit(String trap, VisitKind kind, Duration ago) {
        visits.record(Visit.of(trap, kind, EVENING.minus(ago), "the keeper"), EVENING, Optional.empty());
    }

    private void hear(String node, Instant time, double volts) {
        new Collector(store).take(List.of(message(node, time, volts)));
    }

    private static Message message(String node, Instant time, double volts) {
        String pack = String.format(
                Locale.ROOT,
                "[{\"bt\":%d,\"n\":\"weight\",\"u\":\"kg\",\"v\":9.4},{\"n\":\"battery\",\"u\":\"V\",\"v\":%.3f}]",
                time.getEpochSecond(),
                volts);
        return new Message(time.plusSeconds(2), "traps/" + node + "/readings", pack.getBytes(StandardCharsets.UTF_8));
    }
}
