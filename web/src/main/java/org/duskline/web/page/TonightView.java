package org.duskline.web.page;

import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.evening.Stop;
import org.duskline.web.page.board.Answers;
import org.duskline.web.page.board.Tonight;

/**
 * The page of tonight's work.
 *
 * @param tonight the evening sheet and what else needs a look
 * @param ribbon the evening drawn; empty without a trap to say where
 * @param entries the traps to close in the order of the round, each with its curve around the onset
 * @param line the whole line, on an evening that leaves the keeper at home; empty otherwise
 * @param answers what was answered to what stands on it
 */
public record TonightView(
        Tonight tonight, Optional<Ribbon> ribbon, List<Entry> entries, Optional<LineView> line, Answers answers) {
    private static final int CURVES_FIT = 3;
    private static final int FACTS_FIT = 6;

    public record Entry(Stop stop, Strip strip) {}

    /** What the sheet has to leave out on paper, so that the round stays on one page; empty for nothing. */
    public String crowding() {
        if (entries.size() > CURVES_FIT) {
            return entries.size() > FACTS_FIT ? "many crowded" : "many";
        }
        return "";
    }

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
