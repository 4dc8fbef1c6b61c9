package org.duskline.collector.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.zip.GZIPOutputStream;
import org.duskline.collector.wire.Message;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class RecordedStreamTest {
    private static final String PACK = "[{\"bn\":\"urn:dev:mac:02a1c0fffe000007:\", \"v\":1.50,\"n\":\"weight\"}]";

    @TempDir
    Path folder;

    private final List<SpoiltLine> spoilt = new ArrayList<>();

    private Path file(String name, String... lines) throws IOException {
        return Files.writeString(folder.resolve(name), String.join("\n", lines) + "\n");
    }

    private List<Message> read(Path file) {
        List<Message> messages = new ArrayList<>();
        try (RecordedStream stream = RecordedStream.open(file, spoilt::add)) {
            stream.forEachRemaining(messages::add);
        }
        return messages;
    }

    private static String text(Message message) {
        return new String(message.payload(), StandardCharsets.UTF_8);
    }

    private static void checkSame(List<Message> read, List<Message> written) {
        assertThat(read).hasSameSizeAs(written);
        for (int i = 0; i < read.size(); i++) {
            assertThat(read.get(i).received()).isEqualTo(written.get(i).received());
            assertThat(read.get(i).topic()).isEqualTo(written.get(i).topic());
            assertThat(read.get(i).payload()).isEqualTo(written.get(i).payload());
        }
    }

    @Test
    void the_three_kinds_of_payload_come_back_byte_for_byte() throws Exception {
        List<Message> messages = read(
                file(
                        "a.jsonl",
                        "{\"received\":1777888800.250,\"topic\":\"traps/n07/readings\",\"payload\":" + PACK + "}",
                        "{\"received\":1777888801,\"topic\":\"traps/n07/status\",\"text\":\"online \\u00e9\"}",
                        "{\"topic\":\"traps/n07/readings\",\"base64\":\"gqMhYQ==\",\"received\":1777888802.000001,\"note\":[1]}"));
        assertThat(spoilt).isEmpty();
        assertThat(messages)
                .extracting(Message::received)
                .containsExactly(
                        Instant.parse("2026-05-04T10:00:00.250Z"),
                        Instant.parse("2026-05-04T10:00:01Z"),
                        Instant.parse("2026-05-04T10:00:02.000001Z"));
        assertThat(text(messages.get(0))).isEqualTo(PACK);
        assertThat(text(messages.get(1))).isEqualTo("online é");
        assertThat(messages.get(2).payload()).containsExactly(0x82, 0xa3, 0x21, 0x61);
    }

    @Test
    void a_spoilt_line_is_told_with_its_place_and_passed_over() throws Exception {
        String good = "{\"received\":1,\"topic\":\"t/n/status\",\"text\":\"online\"}";
        Path file = file(
                "b.jsonl",
                good,
                "",
                "{\"received\":1,\"topic\":\"t/n/readings\",\"payload\":[{\"n\":\"in\"",
                "{\"received\":1,\"topic\":\"t/n/readings\",\"payload\":{}}",
                "{\"received\":\"1\",\"topic\":\"t/n/status\",\"text\":\"online\"}",
                "{\"received\":1e99,\"topic\":\"t/n/status\",\"text\":\"online\"}",
                "{\"topic\":\"t/n/status\",\"text\":\"online\"}",
                "{\"received\":1,\"topic\":\"t/n/status\",\"text\":\"online\",\"base64\":\"\"}",
                "{\"received\":1,\"topic\":\"t/n/readings\",\"base64\":\"%\"}",
                "nonsense",
                good + good,
                good);
        assertThat(read(file)).hasSize(2);
        assertThat(spoilt).extracting(SpoiltLine::line).containsExactly(3L, 4L, 5L, 6L, 7L, 8L, 9L, 10L, 11L);
        assertThat(spoilt.get(4)).hasToString(file + ":7: The line lacks \"received\".");
    }

    @Test
    void a_file_cut_off_in_its_last_line_gives_all_before_it() throws Exception {
        Path file = Files.writeString(
                folder.resolve("c.jsonl"),
                "{\"received\":1,\"topic\":\"t/n/status\",\"text\":\"online\"}\n{\"received\":2,\"topic\":\"t/n/st");
        assertThat(read(file)).hasSize(1);
        assertThat(spoilt).extracting(SpoiltLine::line).containsExactly(2L);
    }

    @Test
    void a_compressed_file_is_known_by_its_bytes_and_may_be_cut_off() throws Exception {
        Path file = folder.resolve("d.jsonl");
        Random random = new Random(1);
        try (GZIPOutputStream packed = new GZIPOutputStream(Files.newOutputStream(file))) {
            for (int i = 0; i < 2_000; i++) {
                packed.write(
                        ("{\"received\":" + i + ",\"topic\":\"t/n/status\",\"text\":\"" + random.nextLong() + "\"}\n")
                                .getBytes(StandardCharsets.UTF_8));
            }
        }
        assertThat(read(file)).hasSize(2_000);
        assertThat(spoilt).isEmpty();
        byte[] whole = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(whole, whole.length / 2));
        assertThat(read(file)).hasSizeBetween(500, 1_500);
        assertThat(spoilt).singleElement().asString().contains("cut off");
    }

    @Test
    void a_missing_file_says_which_and_what_to_do() {
        assertThatThrownBy(() -> RecordedStream.open(folder.resolve("none.jsonl"), spoilt::add))
                .isInstanceOf(StreamProblem.class)
                .hasMessageContaining("none.jsonl")
                .hasMessageContaining("Check the name");
    }

    @Test
    void progress_counts_the_bytes_of_the_file() throws Exception {
        Path file = file("e.jsonl", "{\"received\":1,\"topic\":\"t/n/status\",\"text\":\"online\"}");
        try (RecordedStream stream = RecordedStream.open(file, spoilt::add)) {
            stream.forEachRemaining(message -> {});
            assertThat(stream.bytesRead()).isEqualTo(Files.size(file));
            assertThat(stream.linesRead()).isEqualTo(1);
        }
    }

    @Test
    void what_is_written_takes_the_plainest_form_that_loses_nothing() throws Exception {
        Path file = folder.resolve("f.jsonl");
        try (RecordedStreamWriter writer = RecordedStreamWriter.open(file)) {
            Instant received = Instant.parse("2026-05-04T10:00:00.250Z");
            writer.write(new Message(received, "traps/n07/readings", PACK.getBytes(StandardCharsets.UTF_8)));
            writer.write(new Message(received, "traps/n07/readings", ("\n" + PACK).getBytes(StandardCharsets.UTF_8)));
            writer.write(new Message(received, "traps/n07/status", "online".getBytes(StandardCharsets.UTF_8)));
            writer.write(new Message(received, "traps/n07/readings", new byte[] {(byte) 0x82, (byte) 0xa3}));
        }
        assertThat(Files.readAllLines(file))
                .containsExactly(
                        "{\"received\":1777888800.250,\"topic\":\"traps/n07/readings\",\"payload\":" + PACK + "}",
                        "{\"received\":1777888800.250,\"topic\":\"traps/n07/readings\",\"text\":\"\\n"
                                + PACK.replace("\"", "\\\"") + "\"}",
                        "{\"received\":1777888800.250,\"topic\":\"traps/n07/status\",\"text\":\"online\"}",
                        "{\"received\":1777888800.250,\"topic\":\"traps/n07/readings\",\"base64\":\"gqM=\"}");
    }

    static LongStream seeds() {
        return LongStream.range(0, 20);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void any_message_that_is_written_is_read_back_the_same(long seed) {
        Random random = new Random(seed);
        List<Message> written = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            Instant received = Instant.ofEpochSecond(random.nextInt(), random.nextInt(1_000_000_000));
            written.add(new Message(received, "traps/n" + random.nextInt(9) + "/\"ö\"", payload(random)));
        }
        Path file = folder.resolve(random.nextBoolean() ? "g.jsonl" : "g.jsonl.gz");
        for (List<Message> half : List.of(written.subList(0, 90), written.subList(90, 200))) {
            try (RecordedStreamWriter writer = RecordedStreamWriter.open(file)) {
                half.forEach(writer::write);
            }
        }
        checkSame(read(file), written);
        assertThat(spoilt).isEmpty();
    }

    private static byte[] payload(Random random) {
        byte[] pack = PACK.getBytes(StandardCharsets.UTF_8);
        switch (random.nextInt(4)) {
            case 0 -> {
                byte[] bytes = new byte[random.nextInt(40)];
                random.nextBytes(bytes);
                return bytes;
            }
            case 1 -> {
                pack[random.nextInt(pack.length)] = (byte) random.nextInt(256);
                return pack;
            }
            case 2 -> {
                return "[ 1, {\"a\":\"\\u2028\"} ]\t".getBytes(StandardCharsets.UTF_8);
            }
            default -> {
                return pack;
            }
        }
    }
}
