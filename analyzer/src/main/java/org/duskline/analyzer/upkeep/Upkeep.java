package org.duskline.analyzer.upkeep;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.duskline.analyzer.upkeep.Reminder.What;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;

/** The chores of one trap. */
public final class Upkeep {
    private static final Set<VisitKind> BAITS = Set.of(VisitKind.BAITED);
    private static final Set<VisitKind> LOOKS =
            Set.of(VisitKind.SET, VisitKind.BAITED, VisitKind.LOOKED, VisitKind.CLOSED, VisitKind.REHUNG);

    private Upkeep() {}

    /**
     * What is due.
     *
     * @param trap the trap's name
     * @param visits at it, in any order
     * @param lastHeard the last message of its node, if any ever came
     * @param battery the outlook, where it can be told
     * @param now the moment asked about
     * @return nothing for a trap that is not out: never set, or taken down or emptied and not hung again
     */
    public static List<Reminder> due(
            String trap,
            List<Visit> visits,
            Optional<Instant> lastHeard,
            Optional<BatteryOutlook> battery,
            Instant now,
            UpkeepLimits limits) {
        Optional<Instant> out = outSince(visits);
        if (out.isEmpty()) {
            return List.of();
        }
        List<Reminder> due = new ArrayList<>();
        Optional<Instant> baited = last(visits, BAITS).filter(time -> !time.isBefore(out.get()));
        overdue(baited.orElse(out.get()), limits.bait(), now)
                .ifPresent(since -> due.add(new Reminder(
                        What.BAIT,
                        trap,
                        since,
                        baited.isPresent()
                                ? "Bait is " + days(baited.get(), now) + " old; you renew it every "
                                        + days(limits.bait()) + "."
                                : "No bait recorded since it was hung " + days(out.get(), now) + " ago.")));
        Instant seen = last(visits, LOOKS).orElse(out.get());
        overdue(seen, limits.look(), now)
                .ifPresent(since -> due.add(
                        new Reminder(What.LOOK, trap, since, "Nobody has looked at it for " + days(seen, now) + ".")));
        Instant heard = lastHeard.orElse(out.get());
        overdue(heard, limits.unheard(), now)
                .ifPresent(since -> due.add(new Reminder(
                        What.UNHEARD,
                        trap,
                        since,
                        lastHeard.isPresent()
                                ? "Its node was last heard " + ago(heard, now) + " ago."
                                : "Its node was never heard.")));
        battery.ifPresent(outlook -> outlook.daysLeft()
                .filter(days -> days <= limits.battery().toDays())
                .ifPresent(
                        days -> due.add(new Reminder(What.BATTERY, trap, outlook.at(), batterySaid(outlook, days)))));
        return due;
    }

    private static Optional<Instant> outSince(List<Visit> visits) {
        return visits.stream()
                .filter(visit -> visit.kind() == VisitKind.SET || visit.kind().emptiesTheTrap())
                .reduce((one, other) -> other.at().isAfter(one.at()) ? other : one)
                .filter(visit -> visit.kind() == VisitKind.SET || visit.kind() == VisitKind.REHUNG)
                .map(Visit::at);
    }

    private static Optional<Instant> last(List<Visit> visits, Set<VisitKind> kinds) {
        return visits.stream()
                .filter(visit -> kinds.contains(visit.kind()))
                .map(Visit::at)
                .max(Instant::compareTo);
    }

    private static Optional<Instant> overdue(Instant last, Duration limit, Instant now) {
        Instant due = last.plus(limit);
        return now.isBefore(due) ? Optional.empty() : Optional.of(due);
    }

    private static String batterySaid(BatteryOutlook outlook, double days) {
        String most = outlook.daysInterval()
                .filter(interval -> Double.isFinite(interval.high()))
                .map(interval -> Math.round(interval.low()) + " to " + Math.round(interval.high()))
                .orElse("at least "
                        + Math.round(outlook.daysInterval().orElseThrow().low()));
        return String.format(
                Locale.ROOT,
                "Battery at %.2f V, empty in about %d days (%s).",
                outlook.volts(),
                Math.round(days),
                most);
    }

    private static String days(Instant since, Instant now) {
        return days(Duration.between(since, now));
    }

    private static String days(Duration length) {
        long days = length.toDays();
        return days == 1 ? "1 day" : days + " days";
    }

    private static String ago(Instant since, Instant now) {
        Duration length = Duration.between(since, now);
        return length.toDays() >= 2 ? days(length) : length.toHours() + " hours";
    }
}
