package org.duskline.collector.wire;

import java.util.Map;
import java.util.regex.Pattern;

/**
 * Where a message belongs: {@code <root>/<node>/readings}, {@code <root>/<node>/status} or
 * {@code <root>/<node>/settings/ack}, with a root of any depth.
 *
 * @param node the hardware's own name, 1 to 32 of {@code A-Z a-z 0-9 _ -}
 * @param kind which of the three
 */
public record Topic(String node, Kind kind) {
    private static final Map<Kind, String> ENDINGS =
            Map.of(Kind.READINGS, "/readings", Kind.STATUS, "/status", Kind.ACKNOWLEDGEMENT, "/settings/ack");
    private static final Pattern NODE = Pattern.compile("[A-Za-z0-9_-]{1,32}");

    /** What the levels behind the node announce. */
    public enum Kind {
        READINGS,
        STATUS,
        ACKNOWLEDGEMENT
    }

    /** Whether a text may name a node. */
    public static boolean isNodeName(String name) {
        return NODE.matcher(name).matches();
    }

    /** Reads a full topic. */
    public static Topic parse(String topic) throws UnreadableMessage {
        for (Kind kind : Kind.values()) {
            String ending = ENDINGS.get(kind);
            int last = topic.length() - ending.length();
            int before = topic.lastIndexOf('/', last - 1);
            if (topic.endsWith(ending) && before > 0) {
                return new Topic(named(topic.substring(before + 1, last)), kind);
            }
        }
        throw new UnreadableMessage(
                DamageReason.TOPIC,
                "The topic \"" + topic + "\" is none of <root>/<node>/readings, <root>/<node>/status and"
                        + " <root>/<node>/settings/ack.");
    }

    private static String named(String node) throws UnreadableMessage {
        if (!isNodeName(node)) {
            throw new UnreadableMessage(
                    DamageReason.NODE_NAME,
                    "\"" + node + "\" is no node name: it takes 1 to 32 of A-Z, a-z, 0-9, _ and -.");
        }
        return node;
    }
}
