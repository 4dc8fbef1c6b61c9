package org.duskline.collector.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.eclipse.paho.client.mqttv3.MqttTopic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TopicsTest {
    private final Topics topics = new Topics("traps");

    @Test
    void nodes_are_heard_and_the_program_does_not_hear_itself() {
        assertThat(heard(topics.readings("n07"))).isTrue();
        assertThat(heard(topics.status("n07"))).isTrue();
        assertThat(heard(topics.alert("Mill Race"))).isFalse();
        assertThat(heard(topics.condition("Mill Race"))).isFalse();
        assertThat(heard(topics.heartbeat())).isFalse();
    }

    /** MQTT 3.1.1, section 4.7: plus, hash and slash have a meaning of their own in a topic. */
    @Test
    void a_trap_may_have_any_name() {
        assertThat(topics.alert("Barn / east #2 + ladder")).isEqualTo("traps/Barn - east -2 - ladder/alert");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "traps/", "/traps", "tr+ps", "#"})
    void a_root_that_would_not_work_is_refused(String root) {
        assertThatThrownBy(() -> new Topics(root)).hasMessageContaining("cannot be the root");
    }

    private boolean heard(String topic) {
        return MqttTopic.isMatched(topics.allReadings(), topic) || MqttTopic.isMatched(topics.allStatuses(), topic);
    }
}
