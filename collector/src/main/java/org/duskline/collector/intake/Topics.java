package org.duskline.collector.intake;

/**
 * The topics under one root. Nodes speak on {@code root/node/readings}, {@code root/node/status} and
 * {@code root/node/settings/ack}; the program speaks on topics that none of these patterns matches, so that it never
 * hears itself.
 *
 * @param root what all topics begin with, without a slash at its end; usually {@code traps}
 */
public record Topics(String root) {
    public Topics {
        if (root.isBlank() || root.startsWith("/") || root.endsWith("/") || !root.equals(plain(root, true))) {
            throw new IllegalArgumentException("\"" + root + "\" cannot be the root of the topics. Use words with"
                    + " single slashes between them, without + and #, such as traps or farm/traps.");
        }
    }

    String allReadings() {
        return root + "/+/readings";
    }

    String allStatuses() {
        return root + "/+/status";
    }

    String allAcknowledgements() {
        return root + "/+/settings/ack";
    }

    /** Where a node is told its settings (retained). */
    public String settings(String node) {
        return root + "/" + node + "/settings";
    }

    /** Where a node says what is in force. */
    public String acknowledgement(String node) {
        return root + "/" + node + "/settings/ack";
    }

    public String readings(String node) {
        return root + "/" + node + "/readings";
    }

    public String status(String node) {
        return root + "/" + node + "/status";
    }

    /** Where alerts about a trap are told. */
    public String alert(String trap) {
        return root + "/" + plain(trap, false) + "/alert";
    }

    /** Where the condition of a trap can be read at any time (retained). */
    public String condition(String trap) {
        return root + "/" + plain(trap, false) + "/condition";
    }

    /** Where one person, or one program, is told what it wants to hear. */
    public String told(String whom) {
        return root + "/duskline/told/" + plain(whom, false);
    }

    /** Where the program says that it is alive, and where its last will says that it is not. */
    public String heartbeat() {
        return root + "/duskline/heartbeat";
    }

    /** A name without the characters that MQTT keeps for itself (MQTT 3.1.1, section 4.7.1). */
    private static String plain(String name, boolean slashes) {
        return name.replaceAll(slashes ? "[+#\\x00]" : "[+#/\\x00]", "-");
    }
}
