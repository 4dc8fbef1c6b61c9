package org.duskline.web.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.assertj.core.data.Offset;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.Said;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Message;
import org.duskline.web.page.board.BoardUnavailable;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.Habits;
import org.duskline.web.page.board.LineOverview;
import org.duskline.web.page.board.StoreWatchboard;
import org.duskline.web.page.board.Tonight;
import org.duskline.web.page.board.TrapNow;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The pages' view of a real database file, filled by messages as a node sends them. */
class StoreWatchboardTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final Trap OLD_KILN = new Trap("Old Kiln", 46.9, 15.1, VIENNA);
    private static final Instant NOON = Instant.parse("2026-05-12T10:00:00Z");
    private static final Instant EVENING = Instant.parse("2026-05-12T17:00:00Z");

    @TempDir
    Path folder;

    private Store store;
    private FindingLog findings;
    private VisitLog visits;
    private AnswerLog answers;
    private StoreWatchboard board;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("line.db"));
        findings = new FindingLog(store);
        visits = VisitLog.open(store);
        answers = AnswerLog.open(store);
        board = new StoreWatchboard(
                store,
                findings,
                visits,
                answers,
                trap -> Condition.QUIET,
                () -> new BrokerLink(true, NOON, "mqtt://localhost:1883"),
                Habits.USUAL,
                () -> EVENING);
        store.line().put(OLD_KILN);
        store.line().put(new Trap("Tern Bank", 46.91, 15.12, VIENNA));
        store.line().put(new Fitting("n1", "Old Kiln", Fitted.BOTH, Instant.MIN, Instant.MAX));
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void a_node_that_restarted_shows_the_bees_that_passed_and_not_a_fall() {
        hear("n1", NOON, 1000, 900, 9.4);
        hear("n1", NOON.plusSeconds(120), 1040, 930, 9.4);
        hear("n1", NOON.plusSeconds(240), 6, 4, 9.4);
        hear("n1", NOON.plusSeconds(360), 26, 14, 9.4);
        List<CurvePoint> points = points(NOON, NOON.plusSeconds(600));

        assertThat(points).hasSize(4);
        assertThat(points.get(0).inPerMinute()).isNaN();
        assertThat(points.get(1).inPerMinute()).isCloseTo(20, Offset.offset(1e-9));
        assertThat(points).allSatisfy(point -> assertThat(point.inPerMinute()).matches(rate -> !(rate < 0)));
        double inSinceRestart = points.subList(2, 4).stream()
                .mapToDouble(point -> point.inPerMinute() * point.minutes())
                .sum();
        assertThat(inSinceRestart).isCloseTo(26, Offset.offset(1e-9));
        assertThat(points.get(3).minutes()).isEqualTo(2);
    }

    @Test
    void a_trap_without_a_node_and_a_node_without_a_trap_both_show() {
        hear("n1", NOON, 10, 10, 9.4);
        hear("n9", NOON, 5, 5, 8.8);
        LineOverview line = board.line();

        assertThat(line.traps()).extracting(TrapNow::name).containsExactly("Old Kiln", "Tern Bank");
        TrapNow bare = line.traps().get(1);
        assertThat(bare.node()).isEmpty();
        assertThat(bare.lastHeard()).isEmpty();
        assertThat(bare.condition()).isEqualTo(Condition.UNHEARD);
        assertThat(bare.weightKg()).isNaN();
        assertThat(line.looseNodes()).extracting(loose -> loose.node()).containsExactly("n9");
    }

    @Test
    void the_last_numbers_come_with_the_time_they_were_measured_at() {
        hear("n1", NOON, 10, 10, 9.4);
        hear("n1", NOON.plusSeconds(120), 20, 14, 9.5);
        TrapNow trap = board.trap("Old Kiln").orElseThrow().trap();

        assertThat(trap.weightKg()).isEqualTo(9.5);
        assertThat(trap.inPerMinute()).isCloseTo(5, Offset.offset(1e-9));
        assertThat(trap.measured()).contains(NOON.plusSeconds(120));
        assertThat(trap.lastHeard()).contains(NOON.plusSeconds(122));
        assertThat(trap.batteryVolts()).isEqualTo(3.9);
    }

    @Test
    void the_curve_follows_the_trap_when_another_node_is_hung_in_it() {
        store.line().put(new Fitting("n2", "Old Kiln", Fitted.BOTH, NOON.plusSeconds(3600), Instant.MAX));
        store.line().put(new Fitting("n1", "Tern Bank", Fitted.BOTH, NOON.plusSeconds(3600), Instant.MAX));
        hear("n1", NOON, 10, 10, 9.4);
        hear("n1", NOON.plusSeconds(7200), 10, 10, 7.7);
        hear("n2", NOON.plusSeconds(7200), 10, 10, 9.5);

        assertThat(points(NOON, NOON.plusSeconds(9000)))
                .extracting(CurvePoint::weightKg)
                .containsExactly(9.4, 9.5);
    }

    @Test
    void a_swarm_is_on_tonights_sheet_with_the_box_weighed_before_it_came() {
        hear("n1", NOON.minusSeconds(1800), 10, 10, 9.38);
        hear("n1", NOON.minusSeconds(900), 10, 10, 9.4);
        hear("n1", NOON.minusSeconds(300), 10, 10, 9.42);
        keep(moveIn(0.95));
        Tonight tonight = board.tonight();

        assertThat(tonight.sheet().round().stops()).singleElement().satisfies(stop -> {
            assertThat(stop.trap().name()).isEqualTo("Old Kiln");
            assertThat(stop.lift().boxKg()).isEqualTo(9.4);
            assertThat(stop.flightEnd().window().opens()).isAfter(EVENING);
        });
        assertThat(tonight.night()).isPresent();
    }

    @Test
    void a_swarm_that_the_keeper_denied_is_off_the_sheet_and_a_doubtful_one_stands_apart() {
        hear("n1", NOON, 10, 10, 9.4);
        Finding moveIn = moveIn(0.6);
        keep(moveIn);
        assertThat(board.tonight().sheet().doubtful()).hasSize(1);
        assertThat(board.tonight().sheet().round().stops()).isEmpty();

        answers.record(
                new Answer("Old Kiln", Kind.MOVE_IN, moveIn.onset(), Said.RAIN, "", EVENING, "the keeper"),
                Optional.empty());
        assertThat(board.tonight().sheet().doubtful()).isEmpty();
    }

    @Test
    void a_closed_trap_waits_to_be_fetched_and_its_visit_shows() {
        hear("n1", NOON, 10, 10, 9.4);
        keep(moveIn(0.95));
        visits.record(
                Visit.of("Old Kiln", VisitKind.CLOSED, EVENING.minusSeconds(60), "the keeper"),
                EVENING,
                Optional.empty());

        assertThat(board.tonight().sheet().closed()).hasSize(1);
        assertThat(board.tonight().sheet().round().stops()).isEmpty();
        assertThat(board.trap("Old Kiln").orElseThrow().visits()).hasSize(1);
    }

    @Test
    void scouts_are_worth_a_look_and_the_weightiest_finding_stands_first() {
        hear("n1", EVENING.minusSeconds(600), 10, 10, 9.4);
        keep(finding(Kind.SCOUTING, NOON, 0.8));
        keep(finding(Kind.SOAKED, NOON.plusSeconds(60), 0.8));

        assertThat(board.tonight().looks())
                .singleElement()
                .satisfies(look -> assertThat(look.finding())
                        .hasValueSatisfying(
                                finding -> assertThat(finding.kind()).isEqualTo(Kind.SCOUTING)));
        assertThat(board.line().traps().get(0).standing())
                .hasValueSatisfying(finding -> assertThat(finding.kind()).isEqualTo(Kind.SCOUTING));
    }

    @Test
    void a_night_is_shaded_from_dusk_to_dawn_and_a_long_view_has_none() {
        assertThat(board.nights(OLD_KILN, NOON, NOON.plus(Duration.ofDays(3))))
                .hasSize(3)
                .allSatisfy(night -> {
                    assertThat(night.dusk().atZone(VIENNA).getHour()).isBetween(20, 21);
                    assertThat(night.dawn().atZone(VIENNA).getHour()).isBetween(4, 5);
                });
        assertThat(board.nights(OLD_KILN, NOON, NOON.plus(Duration.ofDays(100))))
                .isEmpty();
    }

    @Test
    void a_table_that_is_gone_is_told_and_not_shown_as_an_empty_line() {
        store.jdbi().useHandle(handle -> handle.execute("ALTER TABLE trap RENAME TO elsewhere"));
        assertThatThrownBy(() -> board.line())
                .isInstanceOf(BoardUnavailable.class)
                .hasMessageContaining("could not be read")
                .hasMessageContaining("trap");
    }

    @Test
    void a_scale_that_moves_with_the_sun_is_evened_in_the_curve_and_the_raw_weight_stays() {
        Instant start = NOON.minus(Duration.ofDays(6));
        List<Message> heard = new ArrayList<>();
        for (int minute = 0; minute < 6 * 1440; minute += 15) {
            double celsius = 14 + 9 * Math.sin(minute / 1440.0 * 2 * Math.PI);
            heard.add(weighed(start.plusSeconds(60L * minute), 9.4 + 0.004 * (celsius - 14), celsius));
        }
        new Collector(store).take(heard);
        List<CurvePoint> points = points(NOON.minus(Duration.ofDays(1)), NOON);

        assertThat(spread(points, CurvePoint::weightKg)).isGreaterThan(0.07);
        assertThat(spread(points, CurvePoint::evenedKg)).isLessThan(0.004);
    }

    private static double spread(List<CurvePoint> points, ToDoubleFunction<CurvePoint> weight) {
        DoubleSummaryStatistics all = points.stream().mapToDouble(weight).summaryStatistics();
        return all.getMax() - all.getMin();
    }

    private static Message weighed(Instant time, double weightKg, double celsius) {
        String pack = "[{\"bt\":" + time.getEpochSecond() + ",\"n\":\"weight\",\"u\":\"kg\",\"v\":" + weightKg
                + "},{\"n\":\"cell\",\"u\":\"Cel\",\"v\":" + celsius + "}]";
        return new Message(time.plusSeconds(2), "traps/n1/readings", pack.getBytes(StandardCharsets.UTF_8));
    }

    private List<CurvePoint> points(Instant from, Instant until) {
        List<CurvePoint> points = new ArrayList<>();
        board.curve("Old Kiln", from, until, points::add);
        return points;
    }

    private void hear(String node, Instant time, int in, int out, double weightKg) {
        String pack = "[{\"bt\":" + time.getEpochSecond() + ",\"n\":\"in\",\"u\":\"count\",\"v\":" + in
                + "},{\"n\":\"out\",\"u\":\"count\",\"v\":" + out + "},{\"n\":\"weight\",\"u\":\"kg\",\"v\":" + weightKg
                + "},{\"n\":\"battery\",\"u\":\"V\",\"v\":3.9}]";
        new Collector(store)
                .take(List.of(new Message(
                        time.plusSeconds(2), "traps/" + node + "/readings", pack.getBytes(StandardCharsets.UTF_8))));
    }

    private void keep(Finding finding) {
        findings.keep(List.of(finding), findings.cursor(), (handle, changes) -> {});
    }

    private static Finding moveIn(double probability) {
        return finding(Kind.MOVE_IN, NOON, probability);
    }

    private static Finding finding(Kind kind, Instant onset, double probability) {
        return new Finding(
                "Old Kiln",
                "n1",
                kind,
                onset,
                onset.plusSeconds(600),
                Stage.RAISED,
                onset.plusSeconds(600),
                probability,
                "invented",
                List.of(),
                Map.of(),
                Optional.empty(),
                1);
    }
}
