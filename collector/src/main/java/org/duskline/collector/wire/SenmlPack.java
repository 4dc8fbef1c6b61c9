package org.duskline.collector.wire;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.dataformat.cbor.CBORFactory;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Decodes a SenML pack, JSON (RFC 8428 section 5) or CBOR (section 6), to its resolved records.
 *
 * <p>Strict where leniency could make a damaged message look whole: the array must end where the bytes end, names and
 * types must be as the standard says, a field given twice is an error. Lenient in one place: a record with a name but no
 * value is left out instead of spoiling the others.
 */
public final class SenmlPack {
    private static final JsonFactory JSON = new JsonFactoryBuilder()
            .enable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
            .build();
    private static final CBORFactory CBOR = new CBORFactory();

    private SenmlPack() {}

    /**
     * Decodes a payload.
     *
     * @return the records in the order sent; records of base fields alone are applied and left out
     */
    public static List<SenmlRecord> decode(byte[] payload) throws UnreadableMessage {
        boolean cbor = isCbor(payload);
        if (!cbor) {
            requireUtf8(payload);
        }
        try (JsonParser parser = cbor ? CBOR.createParser(payload) : JSON.createParser(payload)) {
            return readArray(parser, cbor, payload.length);
        } catch (JsonEOFException cutOff) {
            throw new UnreadableMessage(
                    DamageReason.TORN, "The pack ends in its middle, after " + payload.length + " bytes.");
        } catch (StreamConstraintsException tooMuch) {
            throw new UnreadableMessage(DamageReason.ILL_FORMED, "A number, text or nesting goes beyond all measure.");
        } catch (IOException | RuntimeException broken) {
            // Jackson's readers meet some ill-formed input with an unchecked exception.
            throw new UnreadableMessage(DamageReason.ILL_FORMED, firstLine(broken));
        }
    }

    private static boolean isCbor(byte[] payload) throws UnreadableMessage {
        int first = 0;
        while (first < payload.length && isJsonSpace(payload[first])) {
            first++;
        }
        if (first == payload.length) {
            throw new UnreadableMessage(DamageReason.EMPTY, "The payload is empty.");
        }
        if (payload[first] == '[') {
            return false;
        }
        int header = payload[0] & 0xff;
        if (header >= 0x80 && header <= 0x9f) {
            return true;
        }
        throw new UnreadableMessage(
                DamageReason.NOT_SENML,
                String.format(
                        "A pack begins with [ (JSON) or 0x80 to 0x9f (CBOR); this one begins with 0x%02x.", header));
    }

    private static boolean isJsonSpace(byte octet) {
        return octet == ' ' || octet == '\t' || octet == '\n' || octet == '\r';
    }

    private static void requireUtf8(byte[] payload) throws UnreadableMessage {
        for (byte octet : payload) {
            if (octet < 0) {
                requireWellFormed(payload);
                return;
            }
        }
    }

    private static void requireWellFormed(byte[] payload) throws UnreadableMessage {
        try {
            StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(payload));
        } catch (CharacterCodingException broken) {
            throw new UnreadableMessage(DamageReason.ILL_FORMED, "The JSON text is not UTF-8.");
        }
    }

    private static List<SenmlRecord> readArray(JsonParser parser, boolean cbor, int length)
            throws IOException, UnreadableMessage {
        if (parser.nextToken() != JsonToken.START_ARRAY) {
            throw new UnreadableMessage(DamageReason.NOT_SENML, "The payload is not an array.");
        }
        List<SenmlRecord> records = new ArrayList<>();
        SenmlResolver resolver = new SenmlResolver(parser, cbor, records);
        JsonToken token = parser.nextToken();
        while (token != JsonToken.END_ARRAY) {
            if (token == null) {
                throw new UnreadableMessage(
                        DamageReason.TORN, "The pack ends in its middle, after " + length + " bytes.");
            }
            if (token != JsonToken.START_OBJECT) {
                throw new UnreadableMessage(
                        DamageReason.NOT_A_RECORD, "Entry " + resolver.entries() + " of the pack is not a record.");
            }
            resolver.readRecord();
            token = parser.nextToken();
        }
        requireEnd(parser, cbor, length);
        return records;
    }

    private static void requireEnd(JsonParser parser, boolean cbor, int length) throws IOException, UnreadableMessage {
        long end = parser.currentLocation().getByteOffset();
        boolean more;
        try {
            more = cbor ? end < length : parser.nextToken() != null;
        } catch (IOException garbage) {
            more = true;
        }
        if (more) {
            throw new UnreadableMessage(
                    DamageReason.TRAILING,
                    "The pack ends at byte " + end + ", but " + (length - end) + " bytes follow.");
        }
    }

    private static String firstLine(Exception broken) {
        String text = String.valueOf(broken.getMessage());
        int end = text.indexOf('\n');
        return end < 0 ? text : text.substring(0, end);
    }
}
