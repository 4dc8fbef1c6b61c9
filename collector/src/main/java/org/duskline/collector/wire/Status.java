package org.duskline.collector.wire;

import java.nio.charset.StandardCharsets;

/** What a node, or its last will, says of itself. */
public enum Status {
    ONLINE,
    OFFLINE;

    /** Reads the payload of a status message. */
    public static Status parse(byte[] payload) throws UnreadableMessage {
        String text = new String(payload, StandardCharsets.UTF_8).strip();
        return switch (text) {
            case "online" -> ONLINE;
            case "offline" -> OFFLINE;
            default ->
                throw new UnreadableMessage(
                        payload.length == 0 ? DamageReason.EMPTY : DamageReason.STATUS,
                        "A status reads \"online\" or \"offline\"; this one has " + payload.length
                                + " bytes of something else.");
        };
    }
}
