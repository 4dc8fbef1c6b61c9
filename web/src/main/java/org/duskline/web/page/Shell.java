package org.duskline.web.page;

import java.time.Instant;
import java.util.Optional;
import org.duskline.web.page.board.BrokerLink;

/**
 * What every page carries around its content.
 *
 * @param title the page's title
 * @param place which of the main places it belongs to: tonight, line, alerts, more, or empty
 * @param now the instant the page was made
 * @param link the connection to the broker; empty when it is not known
 * @param visitor who sees it
 */
public record Shell(String title, String place, Instant now, Optional<BrokerLink> link, Visitor visitor) {
    /** For whoever asks: the rendering fills in who that is. */
    public Shell(String title, String place, Instant now, Optional<BrokerLink> link) {
        this(title, place, now, link, Visitor.UNKNOWN);
    }

    Shell seenBy(Visitor somebody) {
        return new Shell(title, place, now, link, somebody);
    }

    /** The broker's address, when the connection is down and everybody should know. */
    public Optional<BrokerLink> broken() {
        return link.filter(connection -> !connection.up());
    }

    /** The mark that tells a reader's program which place is the present one. */
    public String current(String here) {
        return here.equals(place) ? "page" : "false";
    }
}
