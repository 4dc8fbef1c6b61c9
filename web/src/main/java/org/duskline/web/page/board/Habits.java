package org.duskline.web.page.board;

import java.time.Duration;
import org.duskline.analyzer.closed.ClosedLimits;
import org.duskline.analyzer.evening.RoundSettings;
import org.duskline.analyzer.upkeep.UpkeepLimits;

/**
 * How the keeper works: what the sheet and the reminders go by.
 *
 * @param round how they go round in the evening
 * @param upkeep when bait, batteries and looks are due
 * @param closed the limits for a closed trap, with how long a swarm may wait to be fetched
 * @param lead how long before setting out the calendar's alarm goes off
 */
public record Habits(RoundSettings round, UpkeepLimits upkeep, ClosedLimits closed, Duration lead) {
    public static final Habits USUAL =
            new Habits(RoundSettings.USUAL, UpkeepLimits.USUAL, ClosedLimits.USUAL, Duration.ofMinutes(60));
}
