package org.duskline.collector.instruction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.duskline.collector.collect.Collector;
import org.duskline.collector.instruction.Instruction.State;
import org.duskline.collector.intake.BrokerUnreachable;
import org.duskline.collector.store.Store;
import org.duskline.collector.wire.Acknowledgement.QuickMode;
import org.duskline.collector.wire.Message;
import org.duskline.collector.wire.SenmlPack;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a node and Duskline say to each other about settings, through the real store and the real way in. */
class InstructionsTest {
    private static final String NODE = "n07";

    @TempDir
    Path folder;

    private final List<String> published = new ArrayList<>();
    private Instant now = Instant.parse("2026-05-02T06:00:00Z");
    private boolean brokerAway;
    private Store store;
    private Collector collector;
    private InstructionLog log;
    private Instructions instructions;

    @BeforeEach
    void open() {
        store = Store.open(folder.resolve("duskline.db"));
        collector = new Collector(store);
        log = InstructionLog.open(store);
        instructions = new Instructions(log, this::publish, () -> now);
    }

    @AfterEach
    void close() {
        store.close();
    }

    private void publish(String node, byte[] payload) throws BrokerUnreachable {
        if (brokerAway) {
            throw new BrokerUnreachable("Nothing answers.");
        }
        published.add(node + " " + new String(payload, StandardCharsets.UTF_8));
    }

    private void says(String records) {
        says(records, false);
    }

    private void says(String records, boolean fromStore) {
        byte[] payload = ("[" + records + "]").getBytes(StandardCharsets.UTF_8);
        collector.take(List.of(new Message(now, "traps/n07/settings/ack", payload, fromStore)));
    }

    private String clock() {
        return ",{\"n\":\"clock\",\"v\":" + now.getEpochSecond() + "}";
    }

    @Test
    void a_board_that_was_never_told_anything_is_told_a_tare_number_to_begin_with_before_any_tare() throws Exception {
        says("{\"n\":\"rev\",\"v\":0},{\"n\":\"period\",\"v\":120},{\"n\":\"quick-period\",\"v\":30}" + clock());
        instructions.send();
        assertThat(published).hasSize(1);
        assertThat(published.get(0))
                .isEqualTo("n07 [{\"n\":\"rev\",\"u\":\"count\",\"v\":1},{\"n\":\"period\",\"u\":\"s\",\"v\":120},"
                        + "{\"n\":\"quick-period\",\"u\":\"s\",\"v\":30},{\"n\":\"quick\",\"vs\":\"auto\"},"
                        + "{\"n\":\"tare\",\"u\":\"count\",\"v\":0},{\"n\":\"time\",\"u\":\"s\",\"v\":1777701600}]");
        assertThat(SenmlPack.decode(published.get(0).substring(4).getBytes(StandardCharsets.UTF_8)))
                .hasSize(6);
        assertThat(published.get(0).length()).as("what a node reads at most").isLessThan(512);
    }

    @Test
    void a_board_that_another_duskline_told_before_keeps_what_it_has() throws Exception {
        says("{\"n\":\"rev\",\"v\":41},{\"n\":\"period\",\"v\":300},{\"n\":\"quick-period\",\"v\":20},"
                + "{\"n\":\"quick\",\"vs\":\"off\"},{\"n\":\"tare\",\"v\":6}" + clock());
        instructions.send();
        assertThat(published).isEmpty();
        Instruction taken = log.newest(NODE).orElseThrow();
        assertThat(taken.settings()).isEqualTo(new NodeSettings(300, 20, QuickMode.OFF, 6));
        assertThat(taken.state()).isEqualTo(State.IN_FORCE);
        assertThat(instructions
                        .ask(NODE, taken.settings().taredOnceMore(), "Ida")
                        .revision())
                .isEqualTo(42);
    }

    @Test
    void what_is_asked_for_waits_for_the_broker_then_for_the_node_and_is_in_force_when_it_says_so() throws Exception {
        brokerAway = true;
        instructions.ask(NODE, new NodeSettings(60, 20, QuickMode.ON, 0), "Ida");
        assertThatThrownBy(() -> instructions.send()).isInstanceOf(BrokerUnreachable.class);
        assertThat(state()).isEqualTo(State.WAITS_FOR_BROKER);

        brokerAway = false;
        instructions.send();
        instructions.send();
        assertThat(published).as("once is enough").hasSize(1);
        assertThat(state()).isEqualTo(State.WAITS_FOR_NODE);

        says("{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0}" + clock());
        assertThat(state()).isEqualTo(State.IN_FORCE);
        assertThat(log.newest(NODE).orElseThrow().by()).isEqualTo("Ida");
    }

    @Test
    void what_waits_goes_out_after_a_restart() throws Exception {
        instructions.ask(NODE, NodeSettings.USUAL, "Ida");
        new Instructions(InstructionLog.open(store), this::publish, () -> now).send();
        assertThat(published).hasSize(1);
    }

    @Test
    void a_newer_wish_goes_out_in_place_of_one_that_no_broker_has_seen() throws Exception {
        instructions.ask(NODE, new NodeSettings(60, 20, QuickMode.ON, 0), "Ida");
        instructions.ask(NODE, new NodeSettings(90, 20, QuickMode.ON, 0), "Ida");
        instructions.send();
        assertThat(published).singleElement().asString().contains("\"v\":90").contains("\"v\":2");
    }

    @Test
    void a_refusal_is_kept_in_the_nodes_words_and_an_old_one_from_the_broker_does_not_fall_on_the_next_wish()
            throws Exception {
        told(new NodeSettings(60, 20, QuickMode.AUTO, 0));
        says("{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0}" + clock());
        told(new NodeSettings(10, 10, QuickMode.AUTO, 0));
        String refusal =
                "{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0},{\"n\":\"refused\",\"vs\":\"period\"}" + clock();
        says(refusal);
        assertThat(state()).isEqualTo(State.REFUSED);
        assertThat(log.newest(NODE).orElseThrow().refused()).hasValue("period");

        told(new NodeSettings(30, 20, QuickMode.AUTO, 0));
        says(refusal, true);
        assertThat(state()).isEqualTo(State.WAITS_FOR_NODE);
        says("{\"n\":\"rev\",\"v\":3},{\"n\":\"tare\",\"v\":0}" + clock());
        assertThat(state()).isEqualTo(State.IN_FORCE);
        assertThat(log.of(NODE, 9).get(1).state()).as("the past stays").isEqualTo(State.REFUSED);
    }

    @Test
    void a_refusal_that_overtakes_the_brokers_confirmation_is_not_lost() throws Exception {
        told(NodeSettings.USUAL);
        says("{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0}" + clock());
        Instructions hasty = new Instructions(
                log,
                (node, payload) -> says("{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0},"
                        + "{\"n\":\"refused\",\"vs\":\"period\"}" + clock()),
                () -> now);
        hasty.ask(NODE, new NodeSettings(3600, 30, QuickMode.AUTO, 0), "Ida");
        hasty.send();
        assertThat(state()).isEqualTo(State.REFUSED);
    }

    @Test
    void a_tare_is_carried_out_later_than_it_is_acknowledged() throws Exception {
        told(NodeSettings.USUAL.taredOnceMore());
        says("{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0}" + clock());
        assertThat(log.heard(NODE).orElseThrow().hasYetToTare(log.newest(NODE).orElseThrow()))
                .isTrue();
        says("{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":1}" + clock());
        assertThat(log.heard(NODE).orElseThrow().hasYetToTare(log.newest(NODE).orElseThrow()))
                .isFalse();
    }

    @Test
    void a_clock_that_is_off_is_told_the_time_under_the_same_revision_and_at_most_once_a_minute() throws Exception {
        told(NodeSettings.USUAL);
        published.clear();
        now = now.plus(Duration.ofMinutes(10));
        String wrong = "{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0},{\"n\":\"clock\",\"v\":7}";
        says(wrong);
        instructions.send();
        now = now.plusSeconds(1);
        says(wrong);
        instructions.send();
        assertThat(published).singleElement().asString().contains("\"rev\",\"u\":\"count\",\"v\":1}");
        now = now.plus(Duration.ofMinutes(1));
        says(wrong);
        instructions.send();
        assertThat(published).hasSize(2);
    }

    @Test
    void what_the_broker_had_kept_says_nothing_about_a_clock_of_now() throws Exception {
        told(NodeSettings.USUAL);
        published.clear();
        now = now.plus(Duration.ofMinutes(10));
        says("{\"n\":\"rev\",\"v\":1},{\"n\":\"tare\",\"v\":0}", true);
        instructions.send();
        assertThat(published).isEmpty();
    }

    @Test
    void a_keeper_can_send_the_time_again_without_a_new_revision() throws Exception {
        told(NodeSettings.USUAL);
        instructions.again(NODE, "Ida");
        instructions.send();
        assertThat(published).hasSize(2);
        assertThat(log.of(NODE, 9)).hasSize(1);
    }

    @Test
    void what_no_node_would_take_is_refused_here_in_words() {
        assertThatThrownBy(() -> new NodeSettings(4, 4, QuickMode.AUTO, 0)).hasMessageContaining("10 to 3600 seconds");
        assertThatThrownBy(() -> new NodeSettings(60, 90, QuickMode.AUTO, 0)).hasMessageContaining("is longer than");
    }

    @Test
    void the_lanes_that_a_node_says_it_has_hold_for_all_that_it_counted() {
        says("{\"n\":\"rev\",\"v\":1},{\"n\":\"lanes\",\"v\":8}" + clock());
        assertThat(store.line().laneBlock(NODE, Instant.EPOCH).orElseThrow().lanes())
                .isEqualTo(8);
    }

    @Test
    void an_acknowledgement_that_cannot_be_read_is_kept_as_damage() {
        says("{\"n\":\"period\",\"v\":1}");
        assertThat(store.damages().ofNode(NODE, 5)).hasSize(1);
        assertThat(store.damages().countOfNode("n7")).isZero();
        assertThat(log.heard(NODE)).isEmpty();
    }

    private void told(NodeSettings settings) throws BrokerUnreachable {
        instructions.ask(NODE, settings, "Ida");
        instructions.send();
    }

    private State state() {
        return log.newest(NODE).orElseThrow().state();
    }
}
