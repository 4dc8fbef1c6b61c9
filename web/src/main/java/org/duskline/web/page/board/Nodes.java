package org.duskline.web.page.board;

import java.util.Optional;
import org.duskline.collector.instruction.NodeSettings;

/** The sensor boards: how each is, and what it is told. Called from many threads at once. */
public interface Nodes {
    /** One node; empty when it was never heard and hangs nowhere. */
    Optional<NodeDetail> node(String name);

    /** Asks a node for other settings. They are kept and sent as soon as a broker takes them. */
    void ask(String node, NodeSettings settings, String by);

    /** Sends a node what holds once more, and with it the time. */
    void tellTime(String node, String by);
}
