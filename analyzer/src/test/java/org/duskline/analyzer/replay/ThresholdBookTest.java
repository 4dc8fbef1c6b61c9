package org.duskline.analyzer.replay;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.outbox.FindingLog;
import org.duskline.analyzer.visit.Answer;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.Said;
import org.duskline.collector.store.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ThresholdBookTest {
    private static final Thresholds DEFAULTS = Thresholds.defaults();
    private static final Thresholds PATIENT = Dial.MOVE_IN_ODDS.turned(DEFAULTS, 80);
    private static final Thresholds HEAVY = Dial.SWARM_KG.turned(DEFAULTS, 0.6);
    private static final Instant NOON = Instant.parse("2031-05-20T12:00:00Z");
    private static final Duration HOUR = Duration.ofHours(1);

    @TempDir
    private Path folder;

    private Store store;
    private ThresholdBook book;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("line.db"));
        book = ThresholdBook.open(store);
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void a_new_book_begins_with_the_defaults() {
        assertThat(book.ofLine(NOON).thresholds()).isEqualTo(DEFAULTS);
        assertThat(book.inForce("Mill Race", NOON).version()).isEqualTo(1);
    }

    @Test
    void a_version_holds_from_its_moment_and_says_what_it_changed() {
        Adopted adopted = book.adopt(PATIENT, NOON, "keeper", "Two drives for rain", "one false alarm less");
        assertThat(book.ofLine(NOON.minusSeconds(1)).version()).isEqualTo(1);
        assertThat(book.inForce("Mill Race", NOON).thresholds()).isEqualTo(PATIENT);
        assertThat(adopted.changed()).containsExactly("How sure before a move-in is told: 20 to 1, now 80 to 1");
        assertThat(ThresholdBook.open(store).versions()).isEqualTo(book.versions());
    }

    @Test
    void going_back_is_a_new_version_with_the_old_numbers() {
        book.adopt(PATIENT, NOON, "keeper", "Two drives for rain", "");
        Adopted back = book.goBack(1, NOON.plus(HOUR), "keeper", "It missed one");
        assertThat(back.version()).isEqualTo(3);
        assertThat(back.backTo()).hasValue(1);
        assertThat(book.ofLine(NOON.plus(HOUR)).thresholds()).isEqualTo(DEFAULTS);
        assertThatThrownBy(() -> book.goBack(9, NOON, "keeper", "why not")).hasMessageContaining("no version 9");
    }

    @Test
    void an_exception_holds_at_its_trap_until_its_day_and_the_next_one_takes_its_place() {
        book.except("Alder Bend", PATIENT, NOON, NOON.plus(HOUR), "keeper", "Glare", "");
        assertThat(book.inForce("Alder Bend", NOON.plus(HOUR).minusSeconds(1)).thresholds())
                .isEqualTo(PATIENT);
        assertThat(book.inForce("Alder Bend", NOON.plus(HOUR)).version()).isEqualTo(1);
        assertThat(book.inForce("Mill Race", NOON).version()).isEqualTo(1);
        Instant later = NOON.plusSeconds(600);
        book.except("Alder Bend", HEAVY, later, later.plusSeconds(60), "keeper", "A hose", "");
        assertThat(book.inForce("Alder Bend", later).thresholds()).isEqualTo(HEAVY);
        assertThat(book.inForce("Alder Bend", later.plusSeconds(60)).thresholds())
                .isEqualTo(DEFAULTS);
        assertThatThrownBy(() -> book.except("Alder Bend", HEAVY, NOON, NOON, "keeper", "A hose", ""))
                .hasMessageContaining("before it begins");
    }

    @Test
    void whoever_adopts_says_why() {
        assertThatThrownBy(() -> book.adopt(PATIENT, NOON, "keeper", " ", ""))
                .hasMessageContaining("Say who adopts the thresholds and why");
        assertThat(book.versions()).hasSize(1);
    }

    @Test
    void a_version_answers_for_the_move_ins_raised_under_it() {
        book.adopt(PATIENT, NOON, "keeper", "Two drives for rain", "");
        FindingLog findings = new FindingLog(store);
        findings.keep(
                List.of(moveIn(1, NOON), moveIn(2, NOON.plus(HOUR)), moveIn(2, NOON.plus(HOUR.multipliedBy(9)))),
                1,
                (h, c) -> {});
        AnswerLog answers = AnswerLog.open(store);
        answers.record(
                new Answer("Mill Race", Kind.MOVE_IN, NOON.plus(HOUR), Said.RAIN, "", NOON.plus(HOUR), "keeper"),
                Optional.empty());
        assertThat(book.effect(2, findings, answers)).isEqualTo(new ThresholdBook.Effect(2, 0, 1));
    }

    private static Finding moveIn(int version, Instant onset) {
        return new Finding(
                "Mill Race",
                "n07",
                Kind.MOVE_IN,
                onset,
                onset,
                Stage.RAISED,
                onset,
                0.9,
                "A swarm is moving in",
                List.of(),
                Map.of(),
                Optional.empty(),
                version);
    }
}
