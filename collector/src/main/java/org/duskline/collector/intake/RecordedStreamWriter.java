package org.duskline.collector.intake;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Base64;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.duskline.collector.wire.Message;

/**
 * Writes messages into a recorded stream, so that reading it gives back the same bytes: a JSON array on one line inline,
 * any other UTF-8 text as text, the rest as base64.
 */
public final class RecordedStreamWriter implements AutoCloseable {
    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private final Path file;
    private final OutputStream output;

    private RecordedStreamWriter(Path file, OutputStream output) {
        this.file = file;
        this.output = output;
    }

    /** Opens a file for writing at its end; gzip-compressed (a further member of the file) if its name ends in .gz. */
    public static RecordedStreamWriter open(Path file) {
        try {
            OutputStream raw = Files.newOutputStream(file, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
            OutputStream packed = file.toString().endsWith(".gz") ? new GZIPOutputStream(raw, true) : raw;
            return new RecordedStreamWriter(file, new BufferedOutputStream(packed));
        } catch (IOException failed) {
            throw failed("opened", file, failed);
        }
    }

    /** Writes one message. */
    public void write(Message message) {
        try {
            output.write(line(message).getBytes(StandardCharsets.UTF_8));
        } catch (IOException failed) {
            throw failed("written", file, failed);
        }
    }

    /** Brings what was written so far to the file. */
    public void flush() {
        try {
            output.flush();
        } catch (IOException failed) {
            throw failed("written", file, failed);
        }
    }

    @SuppressWarnings("JavaInstantGetSecondsGetNano")
    private static String line(Message message) {
        StringBuilder line = new StringBuilder(message.payload().length + 120);
        BigDecimal received = BigDecimal.valueOf(message.received().getEpochSecond())
                .add(BigDecimal.valueOf(message.received().getNano(), 9));
        line.append("{\"received\":").append(scaled(received).toPlainString());
        line.append(",\"topic\":");
        quote(line, message.topic());
        Optional<String> text = text(message.payload());
        if (text.isEmpty()) {
            line.append(",\"base64\":\"")
                    .append(Base64.getEncoder().encodeToString(message.payload()))
                    .append('"');
        } else if (isInlineArray(text.get())) {
            line.append(",\"payload\":").append(text.get());
        } else {
            line.append(",\"text\":");
            quote(line, text.get());
        }
        return line.append("}\n").toString();
    }

    /** Whole milliseconds, more digits only where they are there. */
    private static BigDecimal scaled(BigDecimal received) {
        BigDecimal shortest = received.stripTrailingZeros();
        return shortest.scale() < 3 ? shortest.setScale(3) : shortest;
    }

    private static void quote(StringBuilder line, String text) {
        line.append('"');
        JsonStringEncoder.getInstance().quoteAsString(text, line);
        line.append('"');
    }

    private static Optional<String> text(byte[] payload) {
        try {
            return Optional.of(StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(payload))
                    .toString());
        } catch (CharacterCodingException binary) {
            return Optional.empty();
        }
    }

    /** Whether the text can stand in a line as it is and will be cut out of it again byte for byte. */
    private static boolean isInlineArray(String text) {
        if (!text.startsWith("[") || !text.endsWith("]") || text.indexOf('\n') >= 0 || text.indexOf('\r') >= 0) {
            return false;
        }
        try (JsonParser parser = JSON.createParser(text)) {
            boolean array = parser.nextToken() == JsonToken.START_ARRAY;
            parser.skipChildren();
            return array && parser.currentToken() == JsonToken.END_ARRAY && parser.nextToken() == null;
        } catch (IOException notJson) {
            return false;
        }
    }

    private static StreamProblem failed(String what, Path file, IOException cause) {
        return new StreamProblem(
                "The recorded stream " + file + " cannot be " + what + ": " + cause.getMessage()
                        + ". Check the folder's rights and the disk's free space.",
                cause);
    }

    @Override
    public void close() {
        try {
            output.close();
        } catch (IOException failed) {
            throw failed("closed", file, failed);
        }
    }
}
