package org.duskline.analyzer.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.junit.jupiter.api.Test;

/** When a signal that a fold says again belongs to a finding that was told. */
class LedgerTest {
    private static final Instant NINE = Instant.parse("2031-05-24T09:00:00Z");

    private final Ledger ledger = new Ledger("Alder Bend", List.of());

    private Optional<Finding> enter(Kind kind, Stage stage, Duration later) {
        long onset = NINE.plus(later).toEpochMilli();
        Instant received = NINE.plus(Duration.ofDays(1));
        return ledger.enter(Signal.plain(kind, stage, onset, onset, "Invented"), "n01", received, 1);
    }

    @Test
    void robbers_whose_beginning_is_reckoned_anew_from_late_samples_are_told_once() {
        assertThat(enter(Kind.ROBBING, Stage.RAISED, Duration.ZERO)).isPresent();
        assertThat(enter(Kind.ROBBING, Stage.RAISED, Duration.ofHours(5))).isEmpty();
        assertThat(enter(Kind.ROBBING, Stage.ENDED, Duration.ofHours(5)))
                .hasValueSatisfying(ended -> assertThat(ended.onset()).isEqualTo(NINE));
    }

    @Test
    void robbers_of_the_next_day_are_others() {
        assertThat(enter(Kind.ROBBING, Stage.RAISED, Duration.ZERO)).isPresent();
        assertThat(enter(Kind.ROBBING, Stage.RAISED, Duration.ofHours(24))).isPresent();
    }

    @Test
    void a_second_swarm_of_the_same_day_is_another() {
        assertThat(enter(Kind.MOVE_IN, Stage.RAISED, Duration.ZERO)).isPresent();
        assertThat(enter(Kind.MOVE_IN, Stage.RAISED, Duration.ofHours(2))).isEmpty();
        assertThat(enter(Kind.MOVE_IN, Stage.RAISED, Duration.ofHours(5))).isPresent();
    }
}
