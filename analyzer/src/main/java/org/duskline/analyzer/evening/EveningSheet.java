package org.duskline.analyzer.evening;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.duskline.analyzer.finding.Finding;

/**
 * Tonight's work.
 *
 * @param evening the local date whose evening it is
 * @param zone the zone in which its times are shown
 * @param made when it was made
 * @param round the traps to close, in order
 * @param doubtful traps that may hold a swarm, likeliest first
 * @param closed traps shut already and not yet fetched
 * @param bring what to bring
 * @param cautions what to mind
 */
public record EveningSheet(
        LocalDate evening,
        ZoneId zone,
        Instant made,
        Round round,
        List<Doubtful> doubtful,
        List<AlreadyClosed> closed,
        List<String> bring,
        List<Caution> cautions) {

    public EveningSheet {
        doubtful = List.copyOf(doubtful);
        closed = List.copyOf(closed);
        bring = List.copyOf(bring);
        cautions = List.copyOf(cautions);
    }

    /**
     * Makes the sheet.
     *
     * @param evening the local date
     * @param zone the zone in which times are shown; each trap's evening follows its own
     * @param made now
     * @param traps every trap of the line; those neither closed nor with a standing move-in are left
     *     out
     */
    public static EveningSheet of(
            LocalDate evening, ZoneId zone, Instant made, List<TrapTonight> traps, RoundSettings settings) {
        List<RoundPlan.Due> due = new ArrayList<>();
        List<Doubtful> doubtful = new ArrayList<>();
        List<AlreadyClosed> closed = new ArrayList<>();
        for (TrapTonight tonight : traps) {
            if (tonight.closed().isPresent()) {
                tonight.closed()
                        .ifPresent(visit -> closed.add(new AlreadyClosed(tonight.trap(), visit.at(), visit.by())));
                continue;
            }
            if (!tonight.occupied()) {
                continue;
            }
            Finding moveIn = tonight.moveIn().orElseThrow();
            FlightEnd flightEnd = flightEnd(tonight, evening);
            if (moveIn.probability() >= settings.sureFrom()) {
                due.add(new RoundPlan.Due(tonight, flightEnd));
            } else {
                doubtful.add(new Doubtful(tonight.trap(), moveIn, flightEnd, Settling.of(tonight, moveIn)));
            }
        }
        doubtful.sort(Comparator.comparingDouble(each -> -each.moveIn().probability()));
        Round round = new RoundPlan(settings).of(due);
        boolean nothing = due.isEmpty() && closed.isEmpty() && doubtful.isEmpty();
        return new EveningSheet(
                evening,
                zone,
                made,
                round,
                doubtful,
                closed,
                Packing.list(round.stops()),
                nothing ? List.of() : List.of(Caution.values()));
    }

    private static FlightEnd flightEnd(TrapTonight tonight, LocalDate evening) {
        return FlightEnd.tonight(
                tonight.trap().latitude(),
                tonight.trap().longitude(),
                evening,
                tonight.trap().zone(),
                tonight.evenings());
    }
}
