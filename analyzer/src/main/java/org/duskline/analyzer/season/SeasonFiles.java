package org.duskline.analyzer.season;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonSerializer;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;
import org.duskline.collector.wire.Message;

/** Writes a season as files: capture.jsonl.gz, line.geojson and truth.json, in the forms of the wire contract. */
public final class SeasonFiles {
    private static final ObjectMapper JSON = JsonMapper.builder()
            .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .addModule(new SimpleModule()
                    .addSerializer(double.class, new Absent())
                    .addSerializer(Double.class, new Absent()))
            .build();

    private SeasonFiles() {}

    /** JSON has no NaN: what does not apply is null. */
    private static final class Absent extends JsonSerializer<Double> {
        @Override
        public void serialize(Double value, JsonGenerator to, SerializerProvider provider) throws IOException {
            if (value.isNaN()) {
                to.writeNull();
            } else {
                to.writeNumber(value);
            }
        }
    }

    /** Draws a season and writes it to a folder, which is made if need be. */
    public static Truth write(Path folder, long seed, Level level, int days, int traps) throws IOException {
        return write(folder, Season.of(seed, level, days, traps));
    }

    /** Writes a season to a folder, which is made if need be. */
    public static Truth write(Path folder, Season season) throws IOException {
        Files.createDirectories(folder);
        SeasonStream stream = season.play();
        try (var gzip = new GZIPOutputStream(Files.newOutputStream(folder.resolve("capture.jsonl.gz")), 1 << 16);
                var to = new BufferedWriter(new OutputStreamWriter(gzip, StandardCharsets.UTF_8), 1 << 16)) {
            while (stream.hasNext()) {
                to.write(line(stream.next()));
                to.write('\n');
            }
        }
        Truth truth = stream.truth();
        JSON.writeValue(folder.resolve("truth.json").toFile(), truth);
        JSON.writerWithDefaultPrettyPrinter()
                .writeValue(folder.resolve("line.geojson").toFile(), geometry(season));
        return truth;
    }

    static String line(Message message) throws IOException {
        String head = String.format(
                Locale.ROOT,
                "{\"received\":%d.%03d,\"topic\":\"%s\",",
                message.received().getEpochSecond(),
                message.received().getNano() / 1_000_000,
                message.topic());
        String text = utf8(message.payload());
        if (text == null) {
            return head + "\"base64\":\"" + Base64.getEncoder().encodeToString(message.payload()) + "\"}";
        }
        if (text.startsWith("[") && isJson(text)) {
            return head + "\"payload\":" + text + "}";
        }
        return head + "\"text\":" + JSON.writeValueAsString(text) + "}";
    }

    private static String utf8(byte[] payload) {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(payload))
                    .toString();
        } catch (CharacterCodingException e) {
            return null;
        }
    }

    private static boolean isJson(String text) {
        try {
            JSON.readTree(text);
            return text.endsWith("]");
        } catch (IOException e) {
            return false;
        }
    }

    private static ObjectNode geometry(Season season) {
        ObjectNode collection = JSON.createObjectNode().put("type", "FeatureCollection");
        ArrayNode features = collection.putArray("features");
        for (Watched watched : season.line()) {
            ObjectNode feature = features.addObject().put("type", "Feature");
            feature.putObject("geometry")
                    .put("type", "Point")
                    .putArray("coordinates")
                    .add(watched.trap().longitude())
                    .add(watched.trap().latitude());
            ObjectNode properties = feature.putObject("properties");
            properties
                    .put("trap", watched.trap().name())
                    .put("node", watched.fitting().node())
                    .put("zone", watched.trap().zone().getId())
                    .put("fitted", watched.fitting().fitted().name().toLowerCase(Locale.ROOT));
            if (!Double.isNaN(watched.countsPerKg())) {
                properties.put("counts_per_kg", watched.countsPerKg()).put("offset_counts", 0);
            }
        }
        return collection;
    }
}
