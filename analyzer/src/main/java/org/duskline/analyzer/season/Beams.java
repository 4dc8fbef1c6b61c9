package org.duskline.analyzer.season;

import java.util.List;
import org.duskline.analyzer.season.TrapTruth.Fault;

/**
 * The entrance counter: lanes with two beams each, that lose bees in a crowd (the non-paralyzable model of dead time:
 * measured = true / (1 + true x dead time)), miss some, and take some for going the other way.
 */
final class Beams {
    /** Longest stretch that is taken as steady, seconds. */
    private static final double STEADY = 60;

    private final List<Traffic> bees;
    private final List<Traffic> phantoms;
    private final Dice dice;
    private final int lanes;
    private final double deadMinutes;
    private final double missed;
    private final double turned;
    private final double lean;
    private final Flow flow = new Flow();
    private final Active<Fault> lasting;
    private boolean blocked;
    private double laneShare;
    private double chatter;
    private long in;
    private long out;

    Beams(List<Traffic> bees, List<Traffic> phantoms, Faults faults, Dice dice) {
        this.bees = List.copyOf(bees);
        this.phantoms = List.copyOf(phantoms);
        this.dice = dice;
        this.lanes = dice.pick(List.of(4, 6, 8, 8, 12, 16, 24));
        // A bee takes 0.1 to 0.6 s through a lane (invented).
        this.deadMinutes = dice.uniform(0.1, 0.6) / 60;
        this.missed = dice.uniform(0, 0.08);
        this.turned = dice.uniform(0, 0.04);
        // In over out held within 5 % in most tests (R42).
        this.lean = dice.gauss(0, 0.025);
        this.lasting = new Active<>(faults.truth().stream()
                .filter(f -> f.end() > f.start() && !f.kind().equals("died"))
                .toList());
    }

    /** Counts on from one moment to the next, Unix seconds. */
    void count(double from, double until) {
        double t = from;
        while (t < until) {
            double next = Math.min(until, t + STEADY);
            stretch((t + next) / 2, (next - t) / 60);
            t = next;
        }
    }

    private void stretch(double t, double minutes) {
        flow.clear();
        bees.forEach(cause -> cause.add(t, flow));
        double lane = 1;
        blocked = false;
        laneShare = 1;
        chatter = 0;
        lasting.forEach(t, this::suffer);
        if (flow.total() > 0) {
            lane = 1 / (1 + flow.total() / (lanes * laneShare) * deadMinutes);
        }
        double seen = (1 - missed) * lane * laneShare;
        double inward = flow.in * (1 - turned) + flow.out * turned;
        double outward = flow.out * (1 - turned) + flow.in * turned;
        flow.clear();
        phantoms.forEach(cause -> cause.add(t, flow));
        double shown = blocked ? 0 : 1;
        in += dice.poisson((inward * seen * (1 + lean) + flow.in + chatter / 2) * minutes * shown);
        out += dice.poisson((outward * seen * (1 - lean) + flow.out + chatter / 2) * minutes * shown);
    }

    private void suffer(Fault fault) {
        switch (fault.kind()) {
            case "blocked_counter" -> blocked = true;
            case "blocked_lane" -> laneShare = Math.max(0.3, 1 - 1.5 / lanes);
            case "stuck_high_lane" -> chatter += fault.countsPerMin();
            default -> {}
        }
    }

    void restart() {
        in = 0;
        out = 0;
    }

    long in() {
        return in;
    }

    long out() {
        return out;
    }
}
