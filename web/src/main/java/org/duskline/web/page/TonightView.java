package org.duskline.web.page;

import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.evening.Stop;
import org.duskline.web.page.board.Tonight;

/**
 * The page of tonight's work.
 *
 * @param tonight the evening sheet and what else needs a look
 * @param ribbon the evening drawn; empty without a trap to say where
 * @param entries the traps to close in the order of the round, each with its curve around the onset
 * @param line the whole line, on an evening that leaves the keeper at home; empty otherwise
 */
public record TonightView(Tonight tonight, Optional<Ribbon> ribbon, List<Entry> entries, Optional<LineView> line) {
    public record Entry(Stop stop, Strip strip) {}

    /** The page's heading: the whole evening in one line. */
    public String headline() {
        if (!entries.isEmpty()) {
            return Words.count(entries.size(), "trap", "traps") + " to close tonight";
        }
        if (!tonight.sheet().closed().isEmpty()) {
            return "All closed for tonight";
        }
        if (!tonight.sheet().doubtful().isEmpty()) {
            return "Nothing certain to close tonight";
        }
        return tonight.traps() == 0 ? "No trap on the line yet" : "Nothing to close tonight";
    }
}
