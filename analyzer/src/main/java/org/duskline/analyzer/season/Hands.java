package org.duskline.analyzer.season;

import java.util.List;

/**
 * What hands do to the scale and the beams: kilos within seconds, and back (P); a collection lifts the box off and a
 * re-hung box weighs something else.
 */
final class Hands implements Traffic {
    private final List<TrapTruth.Handling> handlings;
    private final List<TrapTruth.BareHook> bare;
    private final Dice dice;
    private final double[] strength;
    private int next;
    private double settledKg;

    Hands(List<TrapTruth.Handling> handlings, List<TrapTruth.BareHook> bare, Dice dice) {
        this.handlings = handlings;
        this.bare = bare;
        this.dice = dice;
        this.strength = handlings.stream()
                .mapToDouble(h -> switch (h.kind()) {
                    case "passer-by" -> dice.lognormal(0.4, 0.8, 0.03, 3);
                    case "fall" -> dice.uniform(1, 5);
                    default -> dice.lognormal(1.6, 0.7, 0.15, 8);
                })
                .toArray();
    }

    /** Swings at this moment plus what stayed different after earlier hands, kg. */
    double kg(double t) {
        while (next < handlings.size() && handlings.get(next).end() <= t) {
            settledKg += handlings.get(next).shiftKg();
            next++;
        }
        if (next < handlings.size() && handlings.get(next).covers(t)) {
            return settledKg + strength[next] * (dice.chance(0.3) ? 0.1 : 1) * dice.gauss();
        }
        return settledKg;
    }

    /** Whether the box hangs on the scale. */
    boolean hung(double t) {
        for (TrapTruth.BareHook spell : bare) {
            if (spell.covers(t)) {
                return false;
            }
        }
        boolean now = next < handlings.size() && handlings.get(next).covers(t);
        if (now && handlings.get(next).kind().equals("collection")) {
            TrapTruth.Handling taken = handlings.get(next);
            return (t - taken.start()) / (taken.end() - taken.start()) < 0.35 || dice.chance(0.3);
        }
        return true;
    }

    /** Fingers and smoke before the beams. */
    @Override
    public void add(double t, Flow flow) {
        if (next < handlings.size() && handlings.get(next).covers(t)) {
            double each = strength[next] * dice.uniform(0, 3);
            flow.add(each, each);
        }
    }
}
