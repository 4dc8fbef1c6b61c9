package org.duskline.collector.wire;

/** Why a message could not be decoded. The same words serve the store, the pages and the closing count of an import. */
public enum DamageReason {
    TOPIC("a topic that is not a node's"),
    NODE_NAME("a node name that is not allowed"),
    STATUS("a status that is neither online nor offline"),
    EMPTY("nothing in it"),
    NOT_SENML("neither a JSON nor a CBOR array"),
    TORN("cut off before its end"),
    ILL_FORMED("not well-formed"),
    TRAILING("more bytes after its end"),
    NOT_A_RECORD("an entry that is not a SenML record"),
    LABEL("a field of the wrong type, or given twice"),
    MUST_UNDERSTAND("a field that must be understood and is not"),
    VERSION("a later version of SenML"),
    NAME("a name with characters that SenML does not allow"),
    UNIT("a unit that does not fit its quantity"),
    TIME("a time that cannot be placed"),
    NO_QUANTITY("no quantity that is known here");

    private final String words;

    DamageReason(String words) {
        this.words = words;
    }

    /** The reason in a reader's words, to follow "rejected for". */
    public String words() {
        return words;
    }
}
