package org.duskline.web.page;

import java.util.List;
import org.duskline.web.page.board.Closing;
import org.duskline.web.page.board.Tonight;

/**
 * The page of tonight's work.
 *
 * @param tonight the evening sheet
 * @param ribbon the evening drawn
 * @param entries the traps to close, each with its curve around the onset
 */
public record TonightView(Tonight tonight, Ribbon ribbon, List<Entry> entries) {
    public record Entry(Closing closing, Strip strip) {}

    /** The page's heading: the whole evening in one line. */
    public String headline() {
        long open = tonight.stillOpen();
        if (open > 0) {
            return Words.count(open, "trap", "traps") + " to close tonight";
        }
        if (!entries.isEmpty()) {
            return "All closed for tonight";
        }
        return tonight.traps() == 0 ? "No trap on the line yet" : "Nothing to close tonight";
    }
}
