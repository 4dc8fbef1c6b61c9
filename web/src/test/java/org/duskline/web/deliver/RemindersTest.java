package org.duskline.web.deliver;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.collector.store.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RemindersTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final Instant CLOSABLE = Instant.parse("2026-05-12T18:40:00Z");
    private static final Instant SHUTS = Instant.parse("2026-05-13T02:50:00Z");
    private static final List<Unanswered> MILL_RACE =
            List.of(new Unanswered(InventedFinding.moveIn(Stage.RAISED), CLOSABLE, SHUTS));

    @TempDir
    Path folder;

    private final SetClock clock = new SetClock(Instant.parse("2026-05-12T13:20:00Z"));
    private Store store;
    private Deliveries deliveries;
    private Person ada;

    @BeforeEach
    void ada_wants_to_hear_of_swarms() {
        store = Store.open(folder.resolve("evening.db"));
        var equipment = new Deliveries.Equipment(
                Optional.empty(), Optional.empty(), Optional.of(URI.create("https://traps.example/")));
        deliveries = Deliveries.open(store, equipment, clock, new Random(1));
        ada = deliveries.book().add("Ada", VIENNA, Optional.empty());
        deliveries.book().add(ada, Means.LOG, "", "", Set.of(Kind.MOVE_IN));
    }

    @AfterEach
    void close() {
        deliveries.close();
        store.close();
    }

    /** Asks minute by minute, as the running service does, and gives the moments at which something was put in. */
    private List<String> remindedUntil(Instant end, List<Unanswered> traps) {
        List<String> moments = new ArrayList<>();
        int before = deliveries.pending().size();
        while (clock.instant().isBefore(end)) {
            deliveries.remind(traps);
            int now = deliveries.pending().size();
            if (now > before) {
                moments.add(AlertText.moment(clock.instant(), VIENNA));
            }
            before = now;
            clock.pass(Duration.ofMinutes(1));
        }
        return moments;
    }

    private List<String> titles() {
        return deliveries.pending().stream().map(Pending::title).toList();
    }

    @Test
    void a_trap_that_nobody_answered_for_is_reminded_of_once_before_it_can_be_closed_and_once_when_it_can() {
        assertThat(remindedUntil(SHUTS, MILL_RACE)).containsExactly("Tue 12 May, 19:10", "Tue 12 May, 20:40");
        assertThat(titles())
                .containsExactly(
                        "To close this evening, not answered yet: Mill Race", "Nobody has closed it yet: Mill Race");
    }

    @Test
    void the_lead_time_is_the_persons_choice() {
        deliveries.book().reminder(ada, Optional.of(Duration.ofHours(3)));
        assertThat(remindedUntil(CLOSABLE, MILL_RACE)).containsExactly("Tue 12 May, 17:40");
    }

    @Test
    void whoever_wants_no_reminders_or_nothing_of_swarms_gets_none() {
        Person una = deliveries.book().add("Una", VIENNA, Optional.empty());
        deliveries.book().add(una, Means.LOG, "", "", Set.of(Kind.BATTERY_LOW));
        deliveries.book().reminder(ada, Optional.empty());
        assertThat(remindedUntil(SHUTS, MILL_RACE)).isEmpty();
    }

    @Test
    void whoever_was_alarmed_in_the_last_half_hour_is_not_reminded_yet() {
        Instant raised = InventedFinding.moveIn(Stage.RAISED).raised();
        List<Unanswered> soon = List.of(
                new Unanswered(InventedFinding.moveIn(Stage.RAISED), raised.plus(Duration.ofMinutes(5)), SHUTS));
        assertThat(remindedUntil(raised.plus(Duration.ofHours(2)), soon)).containsExactly("Tue 12 May, 15:43");
        assertThat(titles()).containsExactly("Nobody has closed it yet: Mill Race");
    }

    @Test
    void an_evening_on_which_everything_is_answered_is_a_quiet_one() {
        assertThat(remindedUntil(SHUTS, List.of())).isEmpty();
    }

    @Test
    void quiet_hours_do_not_hold_a_reminder_back_because_tomorrow_it_is_of_no_use() {
        deliveries.book().quiet(ada, Optional.of(new QuietHours(LocalTime.of(19, 0), LocalTime.of(7, 0))));
        clock.set(CLOSABLE);
        deliveries.remind(MILL_RACE);
        deliveries.round();
        assertThat(deliveries.latest(5)).singleElement().satisfies(message -> {
            assertThat(message.state()).isEqualTo(State.SENT);
            assertThat(message.text())
                    .contains("It can be closed from Tue 12 May, 20:40 to Wed 13 May, 04:50")
                    .contains("Answer: https://traps.example/answer?link=")
                    .contains("Take care:");
        });
    }
}
