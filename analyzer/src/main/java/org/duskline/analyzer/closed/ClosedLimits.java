package org.duskline.analyzer.closed;

import java.time.Duration;

/**
 * The limits of the rules. None has a published source: all are common practice or our own choice, said beside each.
 *
 * @param settle crossings for so long after closing are the closing itself; own choice
 * @param leakCrossings so many crossings within {@code leakWithin} are a leak, fewer are fanning at the mesh; own choice
 * @param leakWithin see there
 * @param hotCelsius a box this warm is too warm at once. A cluster keeps itself at about 35, and fresh comb gives way
 *     from about 40 on; common practice
 * @param climbCelsius a box above {@code warmCelsius} that climbs by so much within {@code climbWithin} is on its way
 *     there; own choice
 * @param warmCelsius see there
 * @param climbWithin see there
 * @param outsideCelsius outside warmth in which a box may stay closed for {@code outsideFor} only; common practice is 2
 *     to 4 hours above 25
 * @param outsideFor see there
 * @param coolFor cool for so long, a box is no longer overheating; own choice
 * @param fetchWithin how long a swarm may stay closed in; the keeper's own, overnight by common practice
 * @param goneKg weight that vanishes with the box; where the box was weighed, 70 % of it instead
 * @param goneFor how long it must stay away
 */
public record ClosedLimits(
        Duration settle,
        double leakCrossings,
        Duration leakWithin,
        double hotCelsius,
        double climbCelsius,
        double warmCelsius,
        Duration climbWithin,
        double outsideCelsius,
        Duration outsideFor,
        Duration coolFor,
        Duration fetchWithin,
        double goneKg,
        Duration goneFor) {

    public static final ClosedLimits USUAL = new ClosedLimits(
            Duration.ofMinutes(15),
            8,
            Duration.ofMinutes(30),
            38,
            3,
            34,
            Duration.ofMinutes(40),
            25,
            Duration.ofHours(2),
            Duration.ofMinutes(30),
            Duration.ofHours(14),
            6,
            Duration.ofMinutes(10));

    /** The same with the keeper's own limit for fetching. */
    public ClosedLimits fetchedWithin(Duration limit) {
        return new ClosedLimits(
                settle,
                leakCrossings,
                leakWithin,
                hotCelsius,
                climbCelsius,
                warmCelsius,
                climbWithin,
                outsideCelsius,
                outsideFor,
                coolFor,
                limit,
                goneKg,
                goneFor);
    }
}
