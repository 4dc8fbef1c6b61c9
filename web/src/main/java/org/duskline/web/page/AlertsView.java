package org.duskline.web.page;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.Answer;
import org.duskline.web.page.board.LineOverview;

/**
 * The page of what was told.
 *
 * @param line the line as it is now
 * @param days the findings by the day on which they were raised, the last first
 * @param everything whether rain, hands, lodgers and jumps of the scale are shown too
 */
public record AlertsView(LineOverview line, List<Day> days, boolean everything) {
    public record Day(LocalDate date, List<Told> told) {}

    /** A finding, the time zone that its hours are told in, and what was answered to it, first to last. */
    public record Told(Finding finding, ZoneId zone, List<Answer> given) {}
}
