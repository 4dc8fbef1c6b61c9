package org.duskline.collector.wire;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TopicTest {
    @Test
    void the_node_stands_before_what_it_says_under_a_root_of_any_depth() throws Exception {
        assertThat(Topic.parse("traps/n07/readings")).isEqualTo(new Topic("n07", Topic.Kind.READINGS));
        assertThat(Topic.parse("club/east/traps/esp_04a3f1/status"))
                .isEqualTo(new Topic("esp_04a3f1", Topic.Kind.STATUS));
        assertThat(Topic.parse("farm/traps/n07/settings/ack")).isEqualTo(new Topic("n07", Topic.Kind.ACKNOWLEDGEMENT));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "traps/n07/reading",
                "traps/n07",
                "readings",
                "/readings",
                "n07/readings",
                "",
                "traps/n07/settings",
                "traps/n07/ack",
                "traps/n07/readings/"
            })
    void another_topic_is_not_ours(String topic) {
        assertThatThrownBy(() -> Topic.parse(topic))
                .isInstanceOfSatisfying(
                        UnreadableMessage.class, e -> assertThat(e.reason()).isEqualTo(DamageReason.TOPIC));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "traps//readings",
                "traps/n 7/readings",
                "traps/wärme/status",
                "traps/012345678901234567890123456789012/readings"
            })
    void a_node_name_takes_1_to_32_plain_characters(String topic) {
        assertThatThrownBy(() -> Topic.parse(topic))
                .isInstanceOfSatisfying(
                        UnreadableMessage.class, e -> assertThat(e.reason()).isEqualTo(DamageReason.NODE_NAME));
    }

    @Test
    void a_status_is_online_or_offline_and_nothing_else() throws Exception {
        assertThat(Status.parse("online".getBytes(StandardCharsets.UTF_8))).isEqualTo(Status.ONLINE);
        assertThat(Status.parse("offline\n".getBytes(StandardCharsets.UTF_8))).isEqualTo(Status.OFFLINE);
        assertThatThrownBy(() -> Status.parse(new byte[0])).isInstanceOf(UnreadableMessage.class);
        assertThatThrownBy(() -> Status.parse("Online".getBytes(StandardCharsets.UTF_8)))
                .isInstanceOf(UnreadableMessage.class)
                .hasMessageContaining("6 bytes");
    }
}
