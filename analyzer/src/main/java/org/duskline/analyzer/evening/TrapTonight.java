package org.duskline.analyzer.evening;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.visit.Closing;
import org.duskline.analyzer.visit.Visit;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;

/**
 * What is known of one trap when the sheet is made.
 *
 * @param trap the trap
 * @param fitted what it is fitted with
 * @param boxThermometer whether its node measures inside the box
 * @param moveIn its latest finding of that kind, if any
 * @param boxKg what the empty box weighs with its fittings; NaN where nobody weighed it
 * @param visits at this trap, in any order
 * @param evenings its earlier evenings since the swarm came, latest last
 */
public record TrapTonight(
        Trap trap,
        Fitted fitted,
        boolean boxThermometer,
        Optional<Finding> moveIn,
        double boxKg,
        List<Visit> visits,
        List<PastEvening> evenings) {

    public TrapTonight {
        visits = visits.stream().sorted(Comparator.comparing(Visit::at)).toList();
        evenings = List.copyOf(evenings);
        moveIn.ifPresent(finding -> {
            if (finding.kind() != Kind.MOVE_IN) {
                throw new IllegalArgumentException("The evening turns on a move-in, not on " + finding.kind() + ".");
            }
        });
    }

    /** Whether a swarm is held to be in it: a move-in stands, and nobody has emptied the trap since. */
    public boolean occupied() {
        return moveIn.filter(Finding::standing).isPresent()
                && visits.stream().noneMatch(visit -> visit.kind().emptiesTheTrap() && sinceMoveIn(visit));
    }

    /**
     * The visit at which its entrance was shut on what is in it. A keeper who closed a trap saw bees in it, whether or
     * not a move-in stands.
     */
    public Optional<Visit> closed() {
        return Closing.standing(visits).map(Closing::closed).filter(visit -> moveIn.isEmpty() || sinceMoveIn(visit));
    }

    public Place place() {
        return new Place(trap.latitude(), trap.longitude());
    }

    private boolean sinceMoveIn(Visit visit) {
        return moveIn.isPresent() && !visit.at().isBefore(moveIn.get().onset());
    }
}
