package org.duskline.analyzer.season;

import java.util.List;

/**
 * What really happened at one trap. Times are Unix seconds; what does not apply is NaN.
 *
 * @param trap name
 * @param node the node that watched it
 * @param fitted both, counter or scale
 * @param periodS seconds between samples
 * @param samplesPerMessage samples in a pack
 * @param lat degrees north
 * @param lon degrees east
 * @param zone the site's clock
 * @param watchedDays time covered by samples that arrived, holes over one hour left out
 * @param arrivals swarms that moved in
 * @param departures colonies that left by themselves
 * @param scoutingsWithoutArrival scoutings that came to nothing
 * @param robbings combs being stripped
 * @param handlings hands at the trap
 * @param bareHook spells without a box on the scale
 * @param lodgers birds, mice, bumblebees, wasps, ants, spiders
 * @param neighbourFlights bees of a near apiary playing before the trap
 * @param strays bees that look for their colony after it was taken or left
 * @param rain rains
 * @param storms gales that shake the trap
 * @param sunGlare sun in the photo gates
 * @param offline spells without a link
 * @param reboots restarts of the board
 * @param sensorFaults what sensors did wrong
 */
public record TrapTruth(
        String trap,
        String node,
        String fitted,
        int periodS,
        int samplesPerMessage,
        double lat,
        double lon,
        String zone,
        double watchedDays,
        List<Arrival> arrivals,
        List<Departure> departures,
        List<Scouting> scoutingsWithoutArrival,
        List<Robbing> robbings,
        List<Handling> handlings,
        List<BareHook> bareHook,
        List<Lodger> lodgers,
        List<Passers> neighbourFlights,
        List<Passers> strays,
        List<Rain> rain,
        List<Storm> storms,
        List<Glare> sunGlare,
        List<Offline> offline,
        List<Reboot> reboots,
        List<Fault> sensorFaults) {

    /**
     * A swarm that moved in.
     *
     * @param scoutsStart first inspection
     * @param start first bees of the swarm at the trap
     * @param half half of them inside
     * @param end nearly all inside
     * @param massKg of the swarm
     * @param leadHours from scout traffic first passing one a minute to the start
     * @param flightHoursOfScouting hours of full flight that scouts had
     * @param peakPassagesPerMin of scouts
     * @param shortNotice whether there was almost no scouting
     * @param style straight, clinging or branch
     * @param collectedAt when the keeper took it; NaN if never
     * @param heardHalf receipt of the first readable message with a sample a period after half; NaN if never
     * @param countedNetShare counted net-in over true bees; NaN without a counter
     */
    public record Arrival(
            double scoutsStart,
            double start,
            double half,
            double end,
            double massKg,
            double leadHours,
            double flightHoursOfScouting,
            double peakPassagesPerMin,
            boolean shortNotice,
            String style,
            double collectedAt,
            double heardHalf,
            double countedNetShare)
            implements Spell {}

    public record Departure(double start, double end, double massKg) implements Spell {}

    public record Scouting(double start, double end, double peakScouts, double peakPassagesPerMin) implements Spell {}

    public record Robbing(double start, double end, double peakPassagesPerMin, double lossKg) implements Spell {}

    /**
     * Hands at the trap.
     *
     * @param kind visit, passer-by, collection, rehang or fall
     * @param fate of a collection: rehung, bare or taken; empty otherwise
     * @param shiftKg weight that stayed different afterwards
     * @param recorded whether the keeper wrote it down
     */
    public record Handling(double start, double end, String kind, String fate, double shiftKg, boolean recorded)
            implements Spell {}

    public record BareHook(double start, double end) implements Spell {}

    /** An animal: kind and what of it (nest, perch, trail, web), its weight and traffic at most. */
    public record Lodger(double start, double end, String kind, String what, double kg, double peakPassagesPerMin)
            implements Spell {}

    public record Passers(double start, double end, double peakPassagesPerMin) implements Spell {}

    public record Rain(double start, double end, double mm, boolean snow) implements Spell {}

    public record Storm(double start, double end) implements Spell {}

    public record Glare(double start, double end, double countsPerMin, String way) implements Spell {}

    public record Offline(double start, double end, boolean lost) implements Spell {}

    public record Reboot(double at, double downS, String cause, int clockWrongPacks) {}

    /** A fault: kind, its weight step or count rate where that applies. */
    public record Fault(String kind, double start, double end, double kg, double countsPerMin) implements Spell {}
}
