package org.duskline.collector.wire;

import java.util.HashMap;
import java.util.Map;

/** The fields of a SenML record with their JSON and CBOR labels (RFC 8428 table 1). */
enum SenmlLabel {
    BASE_VERSION("bver", -1),
    BASE_NAME("bn", -2),
    BASE_TIME("bt", -3),
    BASE_UNIT("bu", -4),
    BASE_VALUE("bv", -5),
    BASE_SUM("bs", -6),
    NAME("n", 0),
    UNIT("u", 1),
    VALUE("v", 2),
    STRING_VALUE("vs", 3),
    BOOLEAN_VALUE("vb", 4),
    SUM("s", 5),
    TIME("t", 6),
    UPDATE_TIME("ut", 7),
    DATA_VALUE("vd", 8);

    private static final Map<String, SenmlLabel> IN_JSON = new HashMap<>();
    private static final Map<String, SenmlLabel> IN_CBOR = new HashMap<>();

    static {
        for (SenmlLabel label : values()) {
            IN_JSON.put(label.text, label);
            IN_CBOR.put(label.text, label);
            // Jackson hands integer map keys of CBOR over as their decimal text.
            IN_CBOR.put(Integer.toString(label.number), label);
        }
    }

    private final String text;
    private final int number;

    SenmlLabel(String text, int number) {
        this.text = text;
        this.number = number;
    }

    String text() {
        return text;
    }

    int bit() {
        return 1 << (number - BASE_SUM.number);
    }

    /** The field a key stands for, or null for a key of somebody else's extension. */
    static SenmlLabel of(String key, boolean cbor) {
        return (cbor ? IN_CBOR : IN_JSON).get(key);
    }
}
