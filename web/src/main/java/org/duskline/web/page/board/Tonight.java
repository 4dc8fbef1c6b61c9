package org.duskline.web.page.board;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;

/**
 * The evening sheet as its page shows it.
 *
 * @param now the instant it was looked at
 * @param link the connection to the broker
 * @param evening the evening it is for
 * @param zone the time zone that its hours are told in
 * @param night the coming night; the sheet's ribbon is drawn around it
 * @param closings the traps to close, in the order of the round
 * @param looks what else needs a look
 * @param traps how many traps the line has
 */
public record Tonight(
        Instant now,
        BrokerLink link,
        LocalDate evening,
        ZoneId zone,
        Night night,
        List<Closing> closings,
        List<Look> looks,
        int traps) {
    public Tonight {
        closings = List.copyOf(closings);
        looks = List.copyOf(looks);
    }

    /** Whether anything is still open of what was to be closed. */
    public long stillOpen() {
        return closings.stream().filter(closing -> !closing.closed()).count();
    }
}
