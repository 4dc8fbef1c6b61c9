package org.duskline.analyzer.visit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Kind;
import org.duskline.collector.store.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class VisitLogTest {
    private static final Instant NOON = Instant.parse("2026-05-12T10:00:00Z");
    private static final Instant EVENING = Instant.parse("2026-05-12T19:30:00Z");
    private static final Optional<String> ONCE = Optional.empty();

    @TempDir
    private Path folder;

    private Store store;
    private VisitLog visits;
    private AnswerLog answers;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("line.db"));
        visits = VisitLog.open(store);
        answers = AnswerLog.open(store);
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void a_collection_is_kept_with_its_weight_and_where_it_went() {
        Visit collected =
                new Visit("Ford", VisitKind.COLLECTED, EVENING, "Ansgar", 1.62, Optional.of("Quarantine yard"), "calm");
        visits.record(collected, EVENING, ONCE);
        assertThat(visits.of("Ford")).extracting(KeptVisit::visit).containsExactly(collected);
        assertThat(visits.of("Quarry")).isEmpty();
    }

    @Test
    void a_weight_that_was_not_taken_stays_missing() {
        visits.record(Visit.of("Ford", VisitKind.LOOKED, NOON, "Ansgar"), NOON, ONCE);
        assertThat(visits.all().get(0).visit().massKg()).isNaN();
        assertThat(visits.all().get(0).visit().whereTo()).isEmpty();
    }

    @Test
    void visits_come_in_the_order_they_were_made_however_late_they_are_written_down() {
        visits.record(Visit.of("Ford", VisitKind.CLOSED, EVENING, "Ansgar"), EVENING, ONCE);
        visits.record(Visit.of("Ford", VisitKind.LOOKED, NOON, "Mette"), EVENING.plusSeconds(3600), ONCE);
        assertThat(visits.of("Ford"))
                .extracting(kept -> kept.visit().kind())
                .containsExactly(VisitKind.LOOKED, VisitKind.CLOSED);
    }

    @Test
    void a_correction_stands_and_what_was_said_before_stays_in_the_history() {
        long id = visits.record(Visit.of("Ford", VisitKind.CLOSED, NOON, "Ansgar"), NOON, ONCE);
        visits.correct(id, Visit.of("Ford", VisitKind.CLOSED, EVENING, "Ansgar"), EVENING, "Mette");
        assertThat(visits.of("Ford")).hasSize(1);
        assertThat(visits.of("Ford").get(0).visit().at()).isEqualTo(EVENING);
        List<KeptVisit> history = visits.history(id);
        assertThat(history).extracting(KeptVisit::edition).containsExactly(1, 2);
        assertThat(history).extracting(KeptVisit::writtenBy).containsExactly("Ansgar", "Mette");
        assertThat(history.get(0).visit().at()).isEqualTo(NOON);
    }

    @Test
    void a_visit_entered_at_the_wrong_trap_moves_there() {
        long id = visits.record(Visit.of("Ford", VisitKind.LOOKED, NOON, "Ansgar"), NOON, ONCE);
        visits.correct(id, Visit.of("Quarry", VisitKind.LOOKED, NOON, "Ansgar"), EVENING, "Ansgar");
        assertThat(visits.of("Ford")).isEmpty();
        assertThat(visits.of("Quarry")).hasSize(1);
    }

    @Test
    void a_struck_visit_is_gone_from_the_list_but_not_from_its_history() {
        long id = visits.record(Visit.of("Ford", VisitKind.LOOKED, NOON, "Ansgar"), NOON, ONCE);
        visits.strike(id, EVENING, "Ansgar");
        assertThat(visits.all()).isEmpty();
        assertThat(visits.history(id)).extracting(KeptVisit::struck).containsExactly(false, true);
    }

    @Test
    void a_visit_sent_twice_over_a_bad_connection_is_written_once() {
        Visit visit = Visit.of("Ford", VisitKind.LOOKED, NOON, "Ansgar");
        long first = visits.record(visit, NOON, Optional.of("phone-1"));
        long again = visits.record(visit, EVENING, Optional.of("phone-1"));
        assertThat(again).isEqualTo(first);
        assertThat(visits.all()).hasSize(1);
    }

    @Test
    void a_reader_learns_of_every_writing_since_its_last_look() {
        long id = visits.record(Visit.of("Ford", VisitKind.LOOKED, NOON, "Ansgar"), NOON, ONCE);
        long seen = visits.writtenAfter(0).get(0).entry();
        assertThat(visits.writtenAfter(seen)).isEmpty();
        visits.strike(id, EVENING, "Ansgar");
        assertThat(visits.writtenAfter(seen)).extracting(KeptVisit::struck).containsExactly(true);
    }

    @Test
    void visits_outlive_a_restart() {
        visits.record(Visit.of("Ford", VisitKind.SET, NOON, "Ansgar"), NOON, ONCE);
        store.close();
        open();
        assertThat(visits.of("Ford")).hasSize(1);
    }

    @Test
    void correcting_a_visit_that_is_not_there_says_so() {
        assertThatThrownBy(() -> visits.strike(99, NOON, "Ansgar")).hasMessageContaining("no visit number 99");
        assertThatThrownBy(() -> new Visit("Ford", VisitKind.COLLECTED, NOON, "Ansgar", 0, ONCE, ""))
                .hasMessageContaining("Leave the weight out");
    }

    @Test
    void the_latest_verdict_counts_and_being_on_the_way_is_no_verdict() {
        assertThat(answers.verdict("Ford", Kind.MOVE_IN, NOON)).isEmpty();
        answers.record(answer(Said.SEEN, NOON.plusSeconds(60)), ONCE);
        answers.record(answer(Said.RAIN, NOON.plusSeconds(120)), ONCE);
        answers.record(answer(Said.SWARM, NOON.plusSeconds(180)), ONCE);
        answers.record(answer(Said.GOING, NOON.plusSeconds(240)), ONCE);
        assertThat(answers.verdict("Ford", Kind.MOVE_IN, NOON).orElseThrow().said())
                .isEqualTo(Said.SWARM);
        assertThat(answers.to("Ford", Kind.MOVE_IN, NOON)).hasSize(4);
        assertThat(answers.verdict("Ford", Kind.SCOUTING, NOON)).isEmpty();
    }

    @Test
    void an_answer_sent_twice_is_written_once_and_found_by_its_stretch() {
        Answer rain = answer(Said.RAIN, NOON.plusSeconds(60));
        assertThat(answers.record(rain, Optional.of("phone-2"))).isTrue();
        assertThat(answers.record(rain, Optional.of("phone-2"))).isFalse();
        assertThat(answers.between(NOON, NOON.plusSeconds(1))).containsExactly(rain);
        assertThat(answers.between(NOON.plusSeconds(1), EVENING)).isEmpty();
    }

    @Test
    void only_what_denies_a_swarm_is_a_false_alarm() {
        assertThat(Said.RAIN.deniesASwarm()).isTrue();
        assertThat(Said.SWARM.deniesASwarm()).isFalse();
        assertThat(Said.SEEN.deniesASwarm()).isFalse();
        assertThat(Said.SCALE_JUMPED.wireName()).isEqualTo("scale-jumped");
    }

    private static Answer answer(Said said, Instant at) {
        return new Answer("Ford", Kind.MOVE_IN, NOON, said, "", at, "Ansgar");
    }
}
