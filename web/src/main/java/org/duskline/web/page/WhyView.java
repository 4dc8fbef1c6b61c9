package org.duskline.web.page;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.watch.Nearest;
import org.duskline.collector.trap.Trap;

/**
 * How near a stretch at a trap came to each kind of finding.
 *
 * @param trap where
 * @param now the instant it was told
 * @param from begin of the stretch
 * @param until first instant after it
 * @param nearest what came of the question; empty where it was refused
 * @param told what was told at the trap from the stretch
 * @param strip the stretch's curve
 * @param complaint why the question was refused; empty where it was answered
 */
public record WhyView(
        Trap trap,
        Instant now,
        Instant from,
        Instant until,
        List<Nearest> nearest,
        List<Finding> told,
        Strip strip,
        String complaint) {
    private static final double MOST_ODDS = 1000;
    private static final double REACH = Math.log(MOST_ODDS);

    public WhyView {
        nearest = List.copyOf(nearest);
        told = List.copyOf(told);
    }

    public ZoneId zone() {
        return trap.zone();
    }

    /** For a field in which a moment is chosen by the trap's clock. */
    public LocalDateTime local(Instant moment) {
        return LocalDateTime.ofInstant(moment, zone()).truncatedTo(ChronoUnit.MINUTES);
    }

    /** The findings of a kind that were told from the stretch. */
    public List<Finding> told(Nearest one) {
        return told.stream().filter(finding -> finding.kind() == one.kind()).toList();
    }

    /** Where odds stand on a scale from a thousand to one against to as many for, per cent from the left. */
    public static double place(double odds) {
        double reached = Math.max(-REACH, Math.min(REACH, Math.log(odds)));
        return Math.round(1000 * (reached + REACH) / (2 * REACH)) / 10.0;
    }
}
