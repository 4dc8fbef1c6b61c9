package org.duskline.web.page.board;

import java.time.Instant;
import java.util.List;

/**
 * The line as it is now.
 *
 * @param now the instant it was looked at
 * @param link the connection to the broker
 * @param traps every trap in the order of its name
 * @param looseNodes nodes that were heard and hang in no trap
 */
public record LineOverview(Instant now, BrokerLink link, List<TrapNow> traps, List<LooseNode> looseNodes) {
    public LineOverview {
        traps = List.copyOf(traps);
        looseNodes = List.copyOf(looseNodes);
    }
}
