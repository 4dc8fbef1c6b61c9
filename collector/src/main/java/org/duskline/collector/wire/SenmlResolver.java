package org.duskline.collector.wire;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.List;
import org.duskline.collector.wire.SenmlRecord.ValueKind;

/** Reads one record after the other and applies the base fields that stand before and in it (RFC 8428 section 4). */
final class SenmlResolver {
    /** The version that RFC 8428 defines; a pack of a later one must not be used (section 4.4). */
    private static final int VERSION = 10;

    private static final int BASE_FIELDS = SenmlLabel.BASE_VERSION.bit()
            | SenmlLabel.BASE_NAME.bit()
            | SenmlLabel.BASE_TIME.bit()
            | SenmlLabel.BASE_UNIT.bit()
            | SenmlLabel.BASE_VALUE.bit()
            | SenmlLabel.BASE_SUM.bit();
    private static final int VALUE_FIELDS = SenmlLabel.VALUE.bit()
            | SenmlLabel.STRING_VALUE.bit()
            | SenmlLabel.BOOLEAN_VALUE.bit()
            | SenmlLabel.DATA_VALUE.bit();

    private final JsonParser parser;
    private final boolean cbor;
    private final List<SenmlRecord> records;

    // Valid for the pack.
    private int entries;
    private int baseSeen;
    private double version = VERSION;
    private String baseName = "";
    private String baseUnit = "";
    private double baseTime;
    private double baseValue;
    private double baseSum;

    // Valid for one record.
    private int seen;
    private String name;
    private String unit;
    private double time;
    private double value;
    private String text;
    private double sum;

    SenmlResolver(JsonParser parser, boolean cbor, List<SenmlRecord> records) {
        this.parser = parser;
        this.cbor = cbor;
        this.records = records;
    }

    int entries() {
        return entries;
    }

    /** Reads the record whose start the parser stands on. */
    void readRecord() throws IOException, UnreadableMessage {
        seen = 0;
        name = "";
        unit = "";
        text = "";
        time = 0;
        value = 0;
        sum = 0;
        JsonToken token = parser.nextToken();
        while (token != JsonToken.END_OBJECT) {
            if (token != JsonToken.FIELD_NAME) {
                throw new UnreadableMessage(DamageReason.TORN, "The pack ends in its entry " + entries + ".");
            }
            readField(parser.currentName());
            token = parser.nextToken();
        }
        emit();
        entries++;
    }

    private void readField(String key) throws IOException, UnreadableMessage {
        SenmlLabel label = SenmlLabel.of(key, cbor);
        JsonToken token = parser.nextToken();
        if (label == null) {
            if (key.endsWith("_")) {
                throw damage(
                        DamageReason.MUST_UNDERSTAND,
                        "the field \"" + key + "\" must be understood, by its last character, and is unknown here");
            }
            parser.skipChildren();
            return;
        }
        if ((seen & label.bit()) != 0) {
            throw damage(DamageReason.LABEL, "the field \"" + label.text() + "\" is given twice");
        }
        seen |= label.bit();
        readField(label, token);
    }

    private void readField(SenmlLabel label, JsonToken token) throws IOException, UnreadableMessage {
        switch (label) {
            case BASE_VERSION -> checkVersion(number(label, token));
            case BASE_NAME -> baseName = string(label, token);
            case BASE_UNIT -> baseUnit = string(label, token);
            case BASE_TIME -> baseTime = finite(label, token);
            case BASE_VALUE -> baseValue = number(label, token);
            case BASE_SUM -> baseSum = number(label, token);
            case NAME -> name = string(label, token);
            case UNIT -> unit = string(label, token);
            case TIME -> time = finite(label, token);
            case VALUE -> value = number(label, token);
            case SUM -> sum = number(label, token);
            case UPDATE_TIME -> number(label, token);
            case STRING_VALUE, DATA_VALUE -> text = stringOrBytes(label, token);
            case BOOLEAN_VALUE -> text = flag(label, token);
        }
    }

    private void checkVersion(double sent) throws UnreadableMessage {
        if (!(sent >= 1) || sent > VERSION || sent != Math.rint(sent)) {
            throw damage(DamageReason.VERSION, "version " + sent + " of SenML is not one of 1 to " + VERSION);
        }
        if (entries > 0 && sent != version) {
            throw damage(DamageReason.VERSION, "version " + sent + " follows records of version " + version);
        }
        version = sent;
    }

    private void emit() throws UnreadableMessage {
        baseSeen |= seen & BASE_FIELDS;
        int values = Integer.bitCount(seen & VALUE_FIELDS);
        if (values > 1) {
            throw damage(DamageReason.LABEL, "it has more than one value");
        }
        boolean summed = has(SenmlLabel.SUM) || (baseSeen & SenmlLabel.BASE_SUM.bit()) != 0;
        boolean baseAlone = (seen & ~BASE_FIELDS) == 0;
        boolean valued = values == 1 || (baseSeen & SenmlLabel.BASE_VALUE.bit()) != 0;
        if (baseAlone || !(valued || summed)) {
            return;
        }
        String full = baseName.isEmpty() ? name : baseName.concat(name);
        checkName(full);
        ValueKind kind = valueKind(valued);
        records.add(new SenmlRecord(
                full,
                has(SenmlLabel.UNIT) ? unit : baseUnit,
                baseTime + time,
                kind,
                kind == ValueKind.NUMBER ? baseValue + value : Double.NaN,
                text,
                summed ? baseSum + sum : Double.NaN));
    }

    private ValueKind valueKind(boolean valued) {
        if (has(SenmlLabel.STRING_VALUE)) {
            return ValueKind.TEXT;
        }
        if (has(SenmlLabel.BOOLEAN_VALUE)) {
            return ValueKind.FLAG;
        }
        if (has(SenmlLabel.DATA_VALUE)) {
            return ValueKind.DATA;
        }
        return valued ? ValueKind.NUMBER : ValueKind.NONE;
    }

    private boolean has(SenmlLabel label) {
        return (seen & label.bit()) != 0;
    }

    /** RFC 8428 section 4.5.1. */
    private void checkName(String full) throws UnreadableMessage {
        boolean allowed = !full.isEmpty() && isAlphanumeric(full.charAt(0));
        for (int i = 1; allowed && i < full.length(); i++) {
            char c = full.charAt(i);
            allowed = isAlphanumeric(c) || c == '-' || c == ':' || c == '.' || c == '/' || c == '_';
        }
        if (!allowed) {
            throw damage(
                    DamageReason.NAME,
                    full.isEmpty()
                            ? "it has no name"
                            : "its name has other characters than A-Z a-z 0-9 - : . / _, or begins with a sign");
        }
    }

    private static boolean isAlphanumeric(char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    }

    private double number(SenmlLabel label, JsonToken token) throws IOException, UnreadableMessage {
        if (token != JsonToken.VALUE_NUMBER_INT && token != JsonToken.VALUE_NUMBER_FLOAT) {
            throw damage(DamageReason.LABEL, "the field \"" + label.text() + "\" is not a number");
        }
        return parser.getDoubleValue();
    }

    private double finite(SenmlLabel label, JsonToken token) throws IOException, UnreadableMessage {
        double number = number(label, token);
        if (!Double.isFinite(number)) {
            throw damage(DamageReason.TIME, "its time is " + number);
        }
        return number;
    }

    private String string(SenmlLabel label, JsonToken token) throws IOException, UnreadableMessage {
        if (token != JsonToken.VALUE_STRING) {
            throw damage(DamageReason.LABEL, "the field \"" + label.text() + "\" is not a text");
        }
        return parser.getText();
    }

    private String stringOrBytes(SenmlLabel label, JsonToken token) throws IOException, UnreadableMessage {
        if (label == SenmlLabel.DATA_VALUE && token == JsonToken.VALUE_EMBEDDED_OBJECT) {
            // In CBOR a data value is a byte string (RFC 8428 section 6); JSON has its base64url text.
            return java.util.Base64.getUrlEncoder().withoutPadding().encodeToString(parser.getBinaryValue());
        }
        return string(label, token);
    }

    private String flag(SenmlLabel label, JsonToken token) throws UnreadableMessage {
        if (token != JsonToken.VALUE_TRUE && token != JsonToken.VALUE_FALSE) {
            throw damage(DamageReason.LABEL, "the field \"" + label.text() + "\" is neither true nor false");
        }
        return token == JsonToken.VALUE_TRUE ? "true" : "false";
    }

    private UnreadableMessage damage(DamageReason reason, String what) {
        return new UnreadableMessage(reason, "Entry " + entries + " of the pack: " + what + ".");
    }
}
