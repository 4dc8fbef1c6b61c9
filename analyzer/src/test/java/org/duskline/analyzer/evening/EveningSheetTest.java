package org.duskline.analyzer.evening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Fitted;
import org.junit.jupiter.api.Test;

class EveningSheetTest {
    @Test
    void two_filled_traps_make_a_round_from_home_and_back() {
        EveningSheet sheet = Line.sheet(
                Line.filled("Far Oak", 48.1, 16.2, 0.98),
                Line.empty("Quarry"),
                Line.filled("Mill Race", 48.0, 16.0, 0.95));
        Round round = sheet.round();
        assertThat(round.stops()).hasSize(2);
        assertThat(round.stops()).extracting(Stop::number).containsExactly(1, 2);
        double direct = Line.HOME.kmTo(new Place(48.0, 16.0))
                + new Place(48.0, 16.0).kmTo(new Place(48.1, 16.2))
                + new Place(48.1, 16.2).kmTo(Line.HOME);
        assertThat(round.km()).isCloseTo(direct, within(1e-9));
        assertThat(round.driving().toSeconds()).isCloseTo(Math.round(direct / 30 * 3600), within(3L));
        assertThat(round.shortest()).isTrue();
        assertThat(round.total())
                .isEqualTo(Duration.between(
                        round.leave().orElseThrow(), round.homeAt().orElseThrow()));
    }

    @Test
    void the_keeper_leaves_so_as_to_be_at_the_first_trap_when_it_is_best_closed() {
        Stop first = Line.sheet(Line.filled("Mill Race", 48.0, 16.0, 0.95))
                .round()
                .stops()
                .get(0);
        assertThat(first.arrive()).isEqualTo(first.flightEnd().window().best());
        assertThat(first.close()).isEqualTo(first.flightEnd().at().plus(Duration.ofMinutes(30)));
        assertThat(first.late()).isFalse();
    }

    @Test
    void a_round_too_long_for_the_night_says_which_traps_come_too_late() {
        RoundSettings slow = new RoundSettings(Optional.of(Line.HOME), 5, Duration.ofMinutes(25), 0.8);
        EveningSheet sheet = EveningSheet.of(
                Line.EVENING,
                Line.ZONE,
                Line.MADE,
                List.of(Line.filled("Far Oak", 48.4, 16.4, 0.98), Line.filled("Mill Race", 48.0, 16.0, 0.95)),
                slow);
        assertThat(sheet.round().stops()).extracting(Stop::late).containsExactly(false, true);
        assertThat(SheetText.of(sheet)).contains("TOO LATE");
    }

    @Test
    void a_doubtful_trap_is_listed_apart_with_what_would_settle_it() {
        EveningSheet sheet = Line.sheet(Line.filled("Far Oak", 48.1, 16.2, 0.55));
        assertThat(sheet.round().stops()).isEmpty();
        assertThat(sheet.doubtful()).hasSize(1);
        List<String> settles = sheet.doubtful().get(0).settles();
        assertThat(settles.get(0)).startsWith("Rain dries off");
        assertThat(settles.get(1)).startsWith("Ask who was at the trap");
        assertThat(settles).noneMatch(settle -> settle.contains("has no counter"));
    }

    @Test
    void a_trap_with_a_counter_only_is_settled_by_hand_and_ear() {
        TrapTonight tonight = new TrapTonight(
                Line.trap("Far Oak", 48.1, 16.2),
                Fitted.COUNTER,
                false,
                Optional.of(Line.moveIn("Far Oak", 0.6)),
                Double.NaN,
                List.of(),
                List.of());
        assertThat(Line.sheet(tonight).doubtful().get(0).settles())
                .anyMatch(settle -> settle.contains("no scale"))
                .anyMatch(settle -> settle.contains("no thermometer"));
    }

    @Test
    void a_closed_trap_leaves_the_round_and_waits_to_be_fetched() {
        EveningSheet sheet = Line.sheet(Line.filled(
                "Far Oak", 48.1, 16.2, 0.98, Line.visit("Far Oak", VisitKind.CLOSED, "2026-05-12T19:30:00Z")));
        assertThat(sheet.round().stops()).isEmpty();
        assertThat(sheet.closed()).hasSize(1);
        assertThat(sheet.closed().get(0).by()).isEqualTo("Ansgar");
        assertThat(sheet.cautions()).contains(Caution.HEAT, Caution.LOCAL_RULES);
    }

    @Test
    void a_collected_trap_is_off_the_sheet_and_a_visit_before_the_swarm_changes_nothing() {
        EveningSheet collected = Line.sheet(Line.filled(
                "Far Oak", 48.1, 16.2, 0.98, Line.visit("Far Oak", VisitKind.COLLECTED, "2026-05-12T20:30:00Z")));
        assertThat(collected.round().stops()).isEmpty();
        assertThat(collected.closed()).isEmpty();
        assertThat(collected.cautions()).isEmpty();
        EveningSheet earlier = Line.sheet(Line.filled(
                "Far Oak", 48.1, 16.2, 0.98, Line.visit("Far Oak", VisitKind.COLLECTED, "2026-05-01T20:30:00Z")));
        assertThat(earlier.round().stops()).hasSize(1);
    }

    @Test
    void a_withdrawn_finding_is_no_reason_to_drive() {
        Finding raised = Line.moveIn("Far Oak", 0.98);
        Finding withdrawn = new Finding(
                raised.trap(),
                raised.node(),
                raised.kind(),
                raised.onset(),
                raised.raised(),
                Stage.WITHDRAWN,
                raised.changed(),
                raised.probability(),
                raised.summary(),
                raised.evidence(),
                raised.rivals(),
                raised.size(),
                raised.thresholds());
        TrapTonight tonight = new TrapTonight(
                Line.trap("Far Oak", 48.1, 16.2), Fitted.BOTH, true, Optional.of(withdrawn), 8.2, List.of(), List.of());
        assertThat(Line.sheet(tonight).round().stops()).isEmpty();
        assertThat(Line.sheet(tonight).doubtful()).isEmpty();
    }

    @Test
    void the_lift_is_box_and_swarm_and_an_unweighed_box_is_reckoned_heavy() {
        Stop stop = Line.sheet(Line.filled("Far Oak", 48.1, 16.2, 0.98))
                .round()
                .stops()
                .get(0);
        assertThat(stop.lift().kg()).isCloseTo(9.62, within(1e-9));
        assertThat(stop.lift().said()).isEqualTo("9.6 kg (box 8.2 + swarm 1.4), at most 10.0");
        assertThat(stop.lift().takesTwo()).isFalse();
        Lift unknown = new Lift(Double.NaN, 1.4, 1.8);
        assertThat(unknown.takesTwo()).isTrue();
        assertThat(unknown.said()).isEqualTo("up to 17 kg (swarm 1.4; box not weighed)");
    }

    @Test
    void what_is_in_of_a_swarm_that_still_comes_in_is_no_guide_to_the_lift() {
        Stop stop =
                Line.sheet(Line.filling("Far Oak", 48.1, 16.2)).round().stops().get(0);
        assertThat(stop.lift().said()).isEqualTo("up to 13 kg (box 8.2; swarm not weighed yet)");
    }

    @Test
    void a_scale_that_was_zeroed_with_the_box_on_it_does_not_make_the_lift_light() {
        Lift zeroed = new Lift(-0.3, 1.5, 1.8);
        assertThat(zeroed.takesTwo()).isTrue();
        assertThat(zeroed.said()).isEqualTo("up to 17 kg (swarm 1.5; box not weighed)");
        assertThat(new Lift(8.2, Double.NaN, Double.NaN).said())
                .isEqualTo("up to 13 kg (box 8.2; swarm not weighed yet)");
    }

    @Test
    void what_to_bring_is_counted_by_the_traps() {
        EveningSheet sheet =
                Line.sheet(Line.filled("Far Oak", 48.1, 16.2, 0.98), Line.filled("Mill Race", 48.0, 16.0, 0.95));
        assertThat(sheet.bring()).anyMatch(item -> item.startsWith("2 mesh closures"));
        assertThat(sheet.bring()).contains("4 straps");
    }

    @Test
    void a_quiet_evening_asks_for_nothing() {
        EveningSheet sheet = Line.sheet(Line.empty("Quarry"));
        assertThat(sheet.round().stops()).isEmpty();
        assertThat(sheet.bring()).isEmpty();
        assertThat(SheetText.of(sheet)).contains("No trap to close tonight.");
    }

    @Test
    void without_a_home_the_round_begins_at_its_first_trap() {
        EveningSheet sheet = EveningSheet.of(
                Line.EVENING,
                Line.ZONE,
                Line.MADE,
                List.of(Line.filled("Far Oak", 48.1, 16.2, 0.98), Line.filled("Mill Race", 48.0, 16.0, 0.95)),
                RoundSettings.USUAL);
        assertThat(sheet.round().stops().get(0).legKm()).isZero();
        assertThat(sheet.round().homeKm()).isZero();
        assertThat(sheet.round().km()).isCloseTo(new Place(48.0, 16.0).kmTo(new Place(48.1, 16.2)), within(1e-9));
    }

    @Test
    void settings_that_make_no_sense_are_refused() {
        assertThatThrownBy(() -> new RoundSettings(Optional.empty(), 0, Duration.ZERO, 0.8))
                .hasMessageContaining("speed above 0");
        assertThatThrownBy(() -> new RoundSettings(Optional.empty(), 30, Duration.ZERO, 80))
                .hasMessageContaining("between 0 and 1");
    }
}
