package org.duskline.collector.wire;

import java.util.regex.Pattern;

/**
 * Where a message belongs: {@code <root>/<node>/readings} or {@code <root>/<node>/status}, with a root of any depth.
 *
 * @param node the hardware's own name, 1 to 32 of {@code A-Z a-z 0-9 _ -}
 * @param kind which of the two
 */
public record Topic(String node, Kind kind) {
    private static final Pattern NODE = Pattern.compile("[A-Za-z0-9_-]{1,32}");

    /** What the last level of a topic announces. */
    public enum Kind {
        READINGS,
        STATUS
    }

    /** Whether a text may name a node. */
    public static boolean isNodeName(String name) {
        return NODE.matcher(name).matches();
    }

    /** Reads a full topic. */
    public static Topic parse(String topic) throws UnreadableMessage {
        int last = topic.lastIndexOf('/');
        int before = topic.lastIndexOf('/', last - 1);
        if (before < 1) {
            throw notOurs(topic);
        }
        Kind kind = switch (topic.substring(last + 1)) {
            case "readings" -> Kind.READINGS;
            case "status" -> Kind.STATUS;
            default -> throw notOurs(topic);
        };
        String node = topic.substring(before + 1, last);
        if (!isNodeName(node)) {
            throw new UnreadableMessage(
                    DamageReason.NODE_NAME,
                    "\"" + node + "\" is no node name: it takes 1 to 32 of A-Z, a-z, 0-9, _ and -.");
        }
        return new Topic(node, kind);
    }

    private static UnreadableMessage notOurs(String topic) {
        return new UnreadableMessage(
                DamageReason.TOPIC,
                "The topic \"" + topic + "\" is neither <root>/<node>/readings nor <root>/<node>/status.");
    }
}
