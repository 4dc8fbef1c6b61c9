package org.duskline.collector.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.duskline.collector.wire.Acknowledgement.QuickMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The packs are SenML JSON, RFC 8428 section 5; names and ranges are those of the wire contract. */
class AcknowledgementTest {
    @Test
    void the_example_of_the_notes_says_all_that_a_node_can_say() throws Exception {
        Acknowledgement said =
                decode("[{\"bn\":\"urn:dev:mac:02a1c0fffe000007:\",\"n\":\"rev\",\"u\":\"count\",\"v\":7},"
                        + "{\"n\":\"period\",\"u\":\"s\",\"v\":120},{\"n\":\"quick-period\",\"u\":\"s\",\"v\":30},"
                        + "{\"n\":\"quick\",\"vs\":\"auto\"},{\"n\":\"quick-now\",\"vb\":false},"
                        + "{\"n\":\"tare\",\"u\":\"count\",\"v\":2},{\"n\":\"zero\",\"u\":\"count\",\"v\":81234},"
                        + "{\"n\":\"lanes\",\"u\":\"count\",\"v\":8},{\"n\":\"lanes-faulty\",\"u\":\"count\",\"v\":0},"
                        + "{\"n\":\"stored\",\"u\":\"count\",\"v\":0},{\"n\":\"clock\",\"u\":\"s\",\"v\":1777888801}]");
        assertThat(said.revision()).isEqualTo(7);
        assertThat(said.periodSeconds()).hasValue(120);
        assertThat(said.quickPeriodSeconds()).hasValue(30);
        assertThat(said.quick()).hasValue(QuickMode.AUTO);
        assertThat(said.quickNow()).hasValue(false);
        assertThat(said.tare()).hasValue(2);
        assertThat(said.zeroCounts()).hasValue(81_234);
        assertThat(said.lanes()).hasValue(8);
        assertThat(said.faultyLanes()).hasValue(0);
        assertThat(said.waitingSamples()).hasValue(0);
        assertThat(said.clockSeconds()).hasValue(1_777_888_801);
        assertThat(said.refused()).isEmpty();
    }

    @Test
    void a_plain_board_may_say_its_revision_alone_and_what_it_refused() throws Exception {
        Acknowledgement said = decode("[{\"n\":\"rev\",\"v\":0},{\"n\":\"refused\",\"vs\":\"period\"}]");
        assertThat(said.revision()).isZero();
        assertThat(said.tare()).isEmpty();
        assertThat(said.refused()).hasValue("period");
    }

    @Test
    void a_zero_below_nothing_is_a_cell_wired_the_other_way_round() throws Exception {
        assertThat(decode("[{\"n\":\"rev\",\"v\":1},{\"n\":\"zero\",\"v\":-5120}]")
                        .zeroCounts())
                .hasValue(-5120);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "[{\"n\":\"period\",\"v\":120}]",
                "[{\"n\":\"rev\",\"v\":1.5}]",
                "[{\"n\":\"rev\",\"v\":-1}]",
                "[{\"n\":\"rev\",\"vs\":\"seven\"}]"
            })
    void without_a_revision_it_says_nothing(String pack) {
        assertThatThrownBy(() -> decode(pack))
                .isInstanceOf(UnreadableMessage.class)
                .hasMessageContaining("needs rev");
    }

    @Test
    void words_without_end_are_cut() throws Exception {
        String long200 = "x".repeat(200);
        assertThat(decode("[{\"n\":\"rev\",\"v\":1},{\"n\":\"refused\",\"vs\":\"" + long200 + "\"}]")
                        .refused()
                        .orElseThrow())
                .hasSize(80);
    }

    private static Acknowledgement decode(String pack) throws UnreadableMessage {
        return Acknowledgement.decode(pack.getBytes(StandardCharsets.UTF_8));
    }
}
