package org.duskline.collector.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import org.duskline.collector.testing.Await;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Who may do what at the broker inside the program, asked over MQTT. */
class GuardedBrokerTest {
    private static final Topics TOPICS = new Topics("farm/traps");

    @TempDir
    Path folder;

    private final Notebook notebook = new Notebook();
    private BrokerAccess access;
    private EmbeddedBroker broker;
    private BrokerSource source;
    private String nodesPassword;
    private String otherPassword;

    @BeforeEach
    void start() throws Exception {
        access = new BrokerAccess(folder.resolve("passwords"));
        nodesPassword = access.admit("n07", BrokerAccess.Use.NODE);
        otherPassword = access.admit("n08", BrokerAccess.Use.NODE);
        broker = EmbeddedBroker.guarded(folder.resolve("broker"), "127.0.0.1", 0, access, TOPICS);
        source =
                new BrokerSource(broker.address(), "duskline", TOPICS, notebook, InstantSource.system(), new Random(1));
        source.start();
        Await.until("the program itself is in", () -> source.state().connected());
    }

    @AfterEach
    void stop() {
        source.close();
        broker.close();
    }

    private MqttClient as(String user, String password, String client) throws MqttException {
        MqttClient connection = new MqttClient("tcp://127.0.0.1:" + broker.port(), client, new MemoryPersistence());
        MqttConnectOptions options = new MqttConnectOptions();
        if (!user.isEmpty()) {
            options.setUserName(user);
            options.setPassword(password.toCharArray());
        }
        options.setWill("farm/traps/" + user + "/status", "offline".getBytes(StandardCharsets.UTF_8), 1, true);
        connection.connect(options);
        return connection;
    }

    private static void publish(MqttClient client, String topic, String words) throws MqttException {
        client.publish(topic, words.getBytes(StandardCharsets.UTF_8), 1, false);
    }

    @Test
    void a_node_publishes_and_hears_under_its_own_name() throws Exception {
        List<String> settings = new CopyOnWriteArrayList<>();
        try (MqttClient node = as("n07", nodesPassword, "n07");
                BrokerPublisher program = new BrokerPublisher(
                        broker.address(), "duskline-alerts", TOPICS, InstantSource.system(), new Random(2))) {
            program.start();
            node.subscribe("farm/traps/n07/settings", 1, (topic, message) -> settings.add(message.toString()));
            publish(node, "farm/traps/n07/readings", "a reading");
            publish(node, "farm/traps/n07/settings/ack", "an acknowledgement");
            Await.until("both came", () -> notebook.texts().containsAll(List.of("a reading", "an acknowledgement")));
            Await.until("the program can publish", () -> program.state().connected());
            program.settings("n07", "settings".getBytes(StandardCharsets.UTF_8));
            Await.until("the node heard", () -> settings.contains("settings"));
            node.disconnectForcibly(100, 100, false);
        }
    }

    @Test
    void settings_that_were_left_for_a_node_are_handed_over_when_it_comes() throws Exception {
        try (BrokerPublisher program = new BrokerPublisher(
                broker.address(), "duskline-alerts", TOPICS, InstantSource.system(), new Random(2))) {
            program.start();
            Await.until("the program can publish", () -> program.state().connected());
            program.settings("n07", "kept".getBytes(StandardCharsets.UTF_8));
        }
        List<String> settings = new CopyOnWriteArrayList<>();
        MqttClient node = as("n07", nodesPassword, "n07");
        node.subscribe("farm/traps/n07/settings", 1, (topic, message) -> settings.add(message.toString()));
        Await.until("they came", () -> settings.contains("kept"));
        node.disconnect();
        node.close();
    }

    @Test
    void nobody_publishes_under_another_nodes_name() throws Exception {
        for (String topic : List.of(
                "farm/traps/n08/readings",
                "farm/traps/n08/status",
                "farm/traps/n07/settings",
                "farm/traps/n07/alert",
                "farm/traps/duskline/heartbeat",
                "elsewhere/n07/readings")) {
            MqttClient node = as("n07", nodesPassword, "n07");
            assertThatThrownBy(() -> {
                        publish(node, topic, "a lie");
                        publish(node, topic, "a lie");
                    })
                    .as(topic)
                    .isInstanceOf(MqttException.class);
            if (node.isConnected()) {
                node.disconnectForcibly(100, 100, false);
            }
            node.close();
        }
        try (MqttClient other = as("n08", otherPassword, "n08")) {
            publish(other, "farm/traps/n08/readings", "the truth");
            Await.until("the other node's own word came", () -> notebook.texts().contains("the truth"));
            other.disconnect();
        }
        assertThat(notebook.texts()).doesNotContain("a lie");
    }

    @Test
    void no_node_hears_another() throws Exception {
        for (String filter :
                List.of("farm/traps/n08/settings", "farm/traps/+/settings", "#", "farm/traps/+/readings")) {
            MqttClient node = as("n07", nodesPassword, "n07");
            assertThatThrownBy(() -> node.subscribe(filter, 1)).as(filter).isInstanceOf(MqttException.class);
            if (node.isConnected()) {
                node.disconnectForcibly(100, 100, false);
            }
            node.close();
        }
    }

    @Test
    void a_wrong_password_a_stranger_and_nobody_at_all_stay_outside() {
        assertThatThrownBy(() -> as("n07", otherPassword, "n07")).isInstanceOf(MqttException.class);
        assertThatThrownBy(() -> as("n09", nodesPassword, "n09")).isInstanceOf(MqttException.class);
        assertThatThrownBy(() -> as("", "", "somebody")).isInstanceOf(MqttException.class);
    }

    @Test
    void a_node_cannot_take_the_programs_place_by_its_client_name() throws Exception {
        assertThatThrownBy(() -> as("n07", nodesPassword, "duskline")).isInstanceOf(MqttException.class);
        try (MqttClient node = as("n07", nodesPassword, "n07-gateway")) {
            publish(node, "farm/traps/n07/readings", "still heard");
            Await.until("the program still listens", () -> notebook.texts().contains("still heard"));
            node.disconnect();
        }
    }

    @Test
    void a_listener_hears_everything_and_publishes_nothing() throws Exception {
        String password = access.admit("screen", BrokerAccess.Use.LISTENER);
        List<String> heard = new CopyOnWriteArrayList<>();
        MqttClient screen = as("screen", password, "screen");
        screen.subscribe("farm/traps/+/readings", 1, (topic, message) -> heard.add(message.toString()));
        try (MqttClient node = as("n07", nodesPassword, "n07")) {
            publish(node, "farm/traps/n07/readings", "for all");
            Await.until("it heard", () -> heard.contains("for all"));
            node.disconnect();
        }
        assertThatThrownBy(() -> {
                    publish(screen, "farm/traps/n07/readings", "a lie");
                    publish(screen, "farm/traps/n07/readings", "a lie");
                })
                .isInstanceOf(MqttException.class);
        screen.close();
    }

    @Test
    void a_name_that_is_dismissed_or_given_a_fresh_password_is_not_let_in_again_as_before() throws Exception {
        String fresh = access.admit("n07", BrokerAccess.Use.NODE);
        assertThatThrownBy(() -> as("n07", nodesPassword, "n07")).isInstanceOf(MqttException.class);
        MqttClient node = as("n07", fresh, "n07");
        node.disconnect();
        node.close();
        assertThat(access.dismiss("n07")).isTrue();
        assertThat(access.dismiss("n07")).isFalse();
        assertThatThrownBy(() -> as("n07", fresh, "n07")).isInstanceOf(MqttException.class);
    }

    @Test
    void the_file_holds_no_password_and_a_damaged_line_is_named() throws Exception {
        Path file = folder.resolve("passwords");
        assertThat(Files.readString(file)).contains("n07 node ").doesNotContain(nodesPassword);
        assertThat(access.names()).containsExactly("n07", "n08");
        Files.writeString(file, "n07 node\n");
        assertThatThrownBy(access::names).hasMessageContaining("line 1").hasMessageContaining("duskline password");
        assertThatThrownBy(() -> access.admit("n 7", BrokerAccess.Use.NODE)).hasMessageContaining("1 to 32");
    }
}
