package org.duskline.collector.testing;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.duskline.collector.intake.BrokerAddress;
import org.eclipse.paho.client.mqttv3.MqttClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/**
 * A board at a broker that keeps to the wire contract's rules for settings, written from the contract alone: it takes the
 * first tare number as the one to begin with, believes a time only from a message that the broker did not store, and
 * refuses a period that it cannot keep.
 */
public final class AnsweringNode implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int SLOWEST_SECONDS = 1800;

    private final MqttClient client;
    private final String root;
    private final ExecutorService answering = Executors.newSingleThreadExecutor();
    private final List<String> heard = new CopyOnWriteArrayList<>();
    private long revision;
    private long period = 120;
    private long quickPeriod = 30;
    private String quick = "auto";
    private long tare = -1;
    private long clock;
    private long zero = 81_234;

    private AnsweringNode(MqttClient client, String root) {
        this.client = client;
        this.root = root;
    }

    /** Connects and says what is in force, as a board does that nobody has told anything. */
    public static AnsweringNode at(BrokerAddress broker, String name) throws MqttException {
        return at(broker, name, new MqttConnectOptions());
    }

    public static AnsweringNode at(BrokerAddress broker, String name, MqttConnectOptions options) throws MqttException {
        MqttClient client =
                new MqttClient("tcp://" + broker.host() + ":" + broker.port(), name, new MemoryPersistence());
        AnsweringNode node = new AnsweringNode(client, "traps/" + name);
        client.connect(options);
        node.answer("");
        client.subscribe(
                node.root + "/settings", 1, (topic, message) -> node.answering.execute(() -> node.take(message)));
        return node;
    }

    /** What it was told, as it came. */
    public List<String> heard() {
        return heard;
    }

    /** Measures once. */
    public void measure(String records) throws MqttException {
        client.publish(root + "/readings", records.getBytes(StandardCharsets.UTF_8), 1, false);
    }

    private void take(MqttMessage message) {
        try {
            heard.add(new String(message.getPayload(), StandardCharsets.UTF_8));
            JsonNode pack = JSON.readTree(message.getPayload());
            if (value(pack, "period") > SLOWEST_SECONDS) {
                answer(",{\"n\":\"refused\",\"vs\":\"period\"}");
                return;
            }
            revision = value(pack, "rev");
            period = value(pack, "period");
            quickPeriod = value(pack, "quick-period");
            quick = record(pack, "quick").path("vs").asText();
            clock = message.isRetained() ? clock : value(pack, "time");
            long number = value(pack, "tare");
            zero += tare >= 0 && number != tare ? 1000 : 0;
            tare = number;
            answer("");
        } catch (IOException | MqttException broken) {
            throw new IllegalStateException(broken);
        }
    }

    private static long value(JsonNode pack, String name) {
        return record(pack, name).path("v").asLong();
    }

    private static JsonNode record(JsonNode pack, String name) {
        for (JsonNode record : pack) {
            if (record.path("n").asText().equals(name)) {
                return record;
            }
        }
        throw new IllegalArgumentException("The pack says nothing of " + name + ": " + pack);
    }

    private void answer(String more) throws MqttException {
        String pack = "[{\"bn\":\"urn:dev:mac:02a1c0fffe000007:\",\"n\":\"rev\",\"u\":\"count\",\"v\":" + revision
                + "},{\"n\":\"period\",\"u\":\"s\",\"v\":" + period + "},{\"n\":\"quick-period\",\"u\":\"s\",\"v\":"
                + quickPeriod + "},{\"n\":\"quick\",\"vs\":\"" + quick + "\"},{\"n\":\"quick-now\",\"vb\":false},"
                + (tare < 0 ? "" : "{\"n\":\"tare\",\"u\":\"count\",\"v\":" + tare + "},")
                + "{\"n\":\"zero\",\"u\":\"count\",\"v\":" + zero + "},{\"n\":\"lanes\",\"u\":\"count\",\"v\":8}"
                + (clock == 0 ? "" : ",{\"n\":\"clock\",\"u\":\"s\",\"v\":" + clock + "}") + more + "]";
        // Not from the callback's own thread: it would wait for a confirmation that only that thread can take.
        client.publish(root + "/settings/ack", pack.getBytes(StandardCharsets.UTF_8), 1, true);
    }

    @Override
    public void close() throws MqttException, InterruptedException {
        answering.shutdown();
        answering.awaitTermination(5, TimeUnit.SECONDS);
        client.disconnect();
        client.close();
    }
}
