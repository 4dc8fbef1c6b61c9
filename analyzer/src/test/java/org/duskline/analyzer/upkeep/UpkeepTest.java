package org.duskline.analyzer.upkeep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.duskline.analyzer.evening.SampleStream;
import org.duskline.analyzer.upkeep.Reminder.What;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.junit.jupiter.api.Test;

class UpkeepTest {
    private static final Instant MAY_1 = Instant.parse("2026-05-01T08:00:00Z");
    private static final Duration HOUR = Duration.ofHours(1);

    @Test
    void a_trap_hung_and_baited_this_week_needs_nothing() {
        assertThat(due(MAY_1.plus(Duration.ofDays(5)), visit(VisitKind.SET, 0), visit(VisitKind.BAITED, 0)))
                .isEmpty();
    }

    @Test
    void old_bait_and_a_trap_nobody_looks_at_are_told_since_they_were_due() {
        List<Reminder> due = due(MAY_1.plus(Duration.ofDays(17)), visit(VisitKind.SET, 0), visit(VisitKind.BAITED, 1));
        assertThat(due).extracting(Reminder::what).containsExactly(What.BAIT, What.LOOK);
        assertThat(due.get(0).since()).isEqualTo(MAY_1.plus(Duration.ofDays(15)));
        assertThat(due.get(0).said()).isEqualTo("Bait is 16 days old; you renew it every 14 days.");
        assertThat(due.get(1).said()).isEqualTo("Nobody has looked at it for 16 days.");
    }

    @Test
    void a_trap_hung_again_without_bait_is_told_so() {
        List<Reminder> due = due(
                MAY_1.plus(Duration.ofDays(36)),
                visit(VisitKind.SET, 0),
                visit(VisitKind.BAITED, 0),
                visit(VisitKind.COLLECTED, 19),
                visit(VisitKind.REHUNG, 20),
                visit(VisitKind.LOOKED, 35));
        assertThat(due).hasSize(1);
        assertThat(due.get(0).said()).isEqualTo("No bait recorded since it was hung 16 days ago.");
    }

    @Test
    void a_trap_that_is_down_needs_nothing() {
        assertThat(due(MAY_1.plus(Duration.ofDays(60)), visit(VisitKind.SET, 0), visit(VisitKind.TAKEN_DOWN, 20)))
                .isEmpty();
        assertThat(due(MAY_1.plus(Duration.ofDays(60)))).isEmpty();
    }

    @Test
    void a_silent_node_is_told_with_how_long_it_has_been_silent() {
        Instant now = MAY_1.plus(Duration.ofHours(30));
        List<Reminder> due = Upkeep.due(
                "Ford",
                List.of(visit(VisitKind.SET, 0)),
                Optional.of(MAY_1.plus(HOUR)),
                Optional.empty(),
                now,
                UpkeepLimits.USUAL);
        assertThat(due).extracting(Reminder::said).containsExactly("Its node was last heard 29 hours ago.");
        List<Reminder> never = Upkeep.due(
                "Ford", List.of(visit(VisitKind.SET, 0)), Optional.empty(), Optional.empty(), now, UpkeepLimits.USUAL);
        assertThat(never).extracting(Reminder::said).containsExactly("Its node was never heard.");
    }

    @Test
    void a_battery_that_falls_by_ten_millivolts_a_day_is_empty_when_the_line_says() {
        BatteryOutlook outlook =
                BatteryOutlook.fit(battery(4.0, -0.01, 0.003), 3.3).orElseThrow();
        // after 20 days at 3.80 V there are 0.50 V left: 50 days
        assertThat(outlook.voltsPerDay()).isCloseTo(-0.01, within(0.0005));
        assertThat(outlook.daysLeft().orElseThrow()).isCloseTo(50, within(3.0));
        assertThat(outlook.daysInterval().orElseThrow().contains(50)).isTrue();
    }

    @Test
    void a_battery_that_holds_is_not_counted_down() {
        BatteryOutlook outlook =
                BatteryOutlook.fit(battery(4.0, 0.002, 0.0), 3.3).orElseThrow();
        assertThat(outlook.daysLeft()).isEmpty();
    }

    @Test
    void a_few_days_or_no_readings_say_nothing() {
        SampleStream short4 =
                SampleStream.from("2026-05-01T00:00:00Z", HOUR).battery(4).lasting(Duration.ofDays(4));
        assertThat(BatteryOutlook.fit(short4.samples(), 3.3)).isEmpty();
        assertThat(BatteryOutlook.fit(List.of(), 3.3)).isEmpty();
    }

    @Test
    void a_battery_with_few_days_left_is_a_chore() {
        Optional<BatteryOutlook> low = BatteryOutlook.fit(battery(3.55, -0.01, 0.003), 3.3);
        Instant now = MAY_1.plus(Duration.ofDays(1));
        List<Reminder> due =
                Upkeep.due("Ford", List.of(visit(VisitKind.SET, 0)), Optional.of(now), low, now, UpkeepLimits.USUAL);
        assertThat(due).extracting(Reminder::what).containsExactly(What.BATTERY);
        assertThat(due.get(0).said()).startsWith("Battery at 3.35 V, empty in about 5 days");
    }

    private static List<org.duskline.collector.wire.Sample> battery(double start, double perDay, double noise) {
        Random random = new Random(8);
        SampleStream stream = SampleStream.from("2026-05-01T00:00:00Z", HOUR);
        for (int hour = 0; hour < 20 * 24; hour++) {
            double wild = hour % 97 == 0 ? -0.8 : 0;
            stream.battery(start + perDay * hour / 24.0 + noise * random.nextGaussian() + wild)
                    .lasting(HOUR);
        }
        return stream.samples();
    }

    private static Visit visit(VisitKind kind, int day) {
        return Visit.of("Ford", kind, MAY_1.plus(Duration.ofDays(day)), "Ansgar");
    }

    private static List<Reminder> due(Instant now, Visit... visits) {
        return Upkeep.due("Ford", List.of(visits), Optional.of(now), Optional.empty(), now, UpkeepLimits.USUAL);
    }
}
