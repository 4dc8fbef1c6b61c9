package org.duskline.collector.intake;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import org.duskline.collector.wire.Message;

/** Reads one line of a recorded stream. An inline pack is cut out of the line, so that its bytes stay as written. */
final class RecordedLine {
    private static final JsonFactory JSON = new JsonFactory();

    private Instant received;
    private String topic;
    private byte[] payload;

    Message parse(byte[] line, int length) throws IOException {
        received = null;
        topic = null;
        payload = null;
        try (JsonParser parser = JSON.createParser(line, 0, length)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw new JsonParseException(parser, "The line is not a JSON object.");
            }
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                readField(parser, line);
            }
            if (parser.currentToken() != JsonToken.END_OBJECT || parser.nextToken() != null) {
                throw new JsonParseException(parser, "The line goes on behind its object.");
            }
            return message(parser);
        }
    }

    private void readField(JsonParser parser, byte[] line) throws IOException {
        String key = parser.currentName();
        JsonToken token = parser.nextToken();
        switch (key) {
            case "received" -> received = instant(parser, token);
            case "topic" -> topic = text(parser, token, key);
            case "payload" -> onlyPayload(parser, slice(parser, token, line));
            case "text" -> onlyPayload(parser, text(parser, token, key).getBytes(StandardCharsets.UTF_8));
            case "base64" -> onlyPayload(parser, bytes(parser, text(parser, token, key)));
            default -> parser.skipChildren();
        }
    }

    private Message message(JsonParser parser) throws IOException {
        if (received == null || topic == null || payload == null) {
            String missing = received == null ? "received" : topic == null ? "topic" : "payload, text or base64";
            throw new JsonParseException(parser, "The line lacks \"" + missing + "\".");
        }
        return new Message(received, topic, payload);
    }

    private void onlyPayload(JsonParser parser, byte[] bytes) throws IOException {
        if (payload != null) {
            throw new JsonParseException(parser, "The line has more than one of payload, text and base64.");
        }
        payload = bytes;
    }

    private static byte[] slice(JsonParser parser, JsonToken token, byte[] line) throws IOException {
        if (token != JsonToken.START_ARRAY) {
            throw new JsonParseException(parser, "\"payload\" is not an array; other payloads go into text or base64.");
        }
        int from = (int) parser.currentTokenLocation().getByteOffset();
        parser.skipChildren();
        if (parser.currentToken() != JsonToken.END_ARRAY) {
            throw new JsonParseException(parser, "The line is cut off.");
        }
        return Arrays.copyOfRange(line, from, (int) parser.currentLocation().getByteOffset());
    }

    private static String text(JsonParser parser, JsonToken token, String key) throws IOException {
        if (token != JsonToken.VALUE_STRING) {
            throw new JsonParseException(parser, "\"" + key + "\" is not a text.");
        }
        return parser.getText();
    }

    private static byte[] bytes(JsonParser parser, String base64) throws IOException {
        try {
            return Base64.getDecoder().decode(base64);
        } catch (IllegalArgumentException broken) {
            throw new JsonParseException(parser, "\"base64\" is not base64 (RFC 4648 section 4).", broken);
        }
    }

    private static Instant instant(JsonParser parser, JsonToken token) throws IOException {
        if (token == null || !token.isNumeric()) {
            throw new JsonParseException(parser, "\"received\" is not a number of Unix seconds.");
        }
        BigDecimal seconds = parser.getDecimalValue();
        if (seconds.abs().compareTo(BigDecimal.valueOf(1L << 40)) > 0) {
            throw new JsonParseException(parser, "\"received\" is no time: " + seconds + " s.");
        }
        long nanos = seconds.setScale(9, RoundingMode.FLOOR)
                .remainder(BigDecimal.ONE)
                .unscaledValue()
                .longValue();
        return Instant.ofEpochSecond(seconds.longValue(), nanos);
    }
}
