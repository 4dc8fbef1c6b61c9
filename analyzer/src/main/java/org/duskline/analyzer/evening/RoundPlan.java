package org.duskline.analyzer.evening;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.finding.SwarmSize;

/** Orders the night's traps and puts times to them. */
final class RoundPlan {
    private final RoundSettings settings;

    RoundPlan(RoundSettings settings) {
        this.settings = settings;
    }

    /** A trap to be closed, with its window. */
    record Due(TrapTonight trap, FlightEnd flightEnd) {}

    /** The shortest way round, in whichever of its two directions is over sooner. */
    Round of(List<Due> due) {
        if (due.isEmpty()) {
            return new Round(List.of(), Optional.empty(), 0, Optional.empty(), 0, Duration.ZERO, Duration.ZERO, true);
        }
        Round one = timed(ordered(due));
        List<Due> back = new ArrayList<>(ordered(due));
        Collections.reverse(back);
        Round other = timed(back);
        return badness(other) < badness(one) ? other : one;
    }

    private List<Due> ordered(List<Due> due) {
        List<Place> places = new ArrayList<>();
        settings.home().ifPresent(places::add);
        due.forEach(each -> places.add(each.trap().place()));
        int offset = settings.home().isPresent() ? 1 : 0;
        return RoundOrder.closed(RoundOrder.distances(places)).stream()
                .filter(index -> index >= offset)
                .map(index -> due.get(index - offset))
                .toList();
    }

    private Round timed(List<Due> order) {
        Place home = settings.home().orElse(order.get(0).trap().place());
        double firstKm = home.kmTo(order.get(0).trap().place());
        Instant leave = best(order.get(0)).minus(settings.drive(firstKm));
        List<Stop> stops = new ArrayList<>();
        Place here = home;
        Instant now = leave;
        double km = 0;
        Duration driving = Duration.ZERO;
        for (Due due : order) {
            double legKm = here.kmTo(due.trap().place());
            Duration drive = settings.drive(legKm);
            Instant arrive = now.plus(drive);
            Stop stop = stop(stops.size() + 1, due, legKm, drive, arrive);
            stops.add(stop);
            Instant start = arrive.isBefore(best(due)) ? best(due) : arrive;
            now = start.plus(settings.perStop());
            here = due.trap().place();
            km += legKm;
            driving = driving.plus(drive);
        }
        double homeKm = settings.home().map(here::kmTo).orElse(0.0);
        Instant homeAt = now.plus(settings.drive(homeKm));
        driving = driving.plus(settings.drive(homeKm));
        return new Round(
                stops,
                Optional.of(leave),
                homeKm,
                Optional.of(homeAt),
                km + homeKm,
                driving,
                Duration.between(leave, homeAt).minus(driving),
                order.size() <= RoundOrder.MOST_STOPS_EXACTLY);
    }

    private static Instant best(Due due) {
        return due.flightEnd().window().best();
    }

    private static Stop stop(int number, Due due, double legKm, Duration drive, Instant arrive) {
        TrapTonight tonight = due.trap();
        Finding moveIn = tonight.moveIn().orElseThrow();
        // What is known while a swarm is still coming in is no guide to what will hang in the box by dusk.
        Optional<SwarmSize> size = moveIn.stage() == Stage.RAISED ? Optional.empty() : moveIn.size();
        Lift lift = new Lift(
                tonight.boxKg(),
                size.map(SwarmSize::kg).orElse(Double.NaN),
                size.map(SwarmSize::highKg).orElse(Double.NaN));
        boolean late = !arrive.isBefore(due.flightEnd().window().closes());
        return new Stop(number, tonight.trap(), moveIn, due.flightEnd(), lift, legKm, drive, arrive, late);
    }

    /** Traps reached too late weigh more than any hour. */
    private static long badness(Round round) {
        long late = round.stops().stream().filter(Stop::late).count();
        return late * Duration.ofDays(10).toSeconds()
                + round.homeAt().orElseThrow().getEpochSecond();
    }
}
