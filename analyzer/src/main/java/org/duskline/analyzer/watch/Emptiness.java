package org.duskline.analyzer.watch;

import org.duskline.analyzer.detect.FormerDays;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/**
 * Whether a colony is still there, by its weight and by its flight: two witnesses, either of which can be out of order.
 * Part of the fold's state, so it can be copied.
 */
final class Emptiness implements Cloneable {
    private static final long MINUTE = 60_000L;

    /** Hours of flight weather without bees after which a trap is empty whatever its scale says. */
    private static final double IDLE_HOURS = 7;

    /** As many where the scale still has the swarm's weight: storms, or lanes that are blocked, keep a colony in for days. */
    private static final double IDLE_HOURS_WHILE_HEAVY = 24;

    /** So long in flight weather the counter must agree or disagree with a scale that has lost the swarm's weight. */
    private static final double SETTLES_HOURS = 1.5;

    /** Before that, hands were not at the trap yet: own choice. */
    private static final long HANDS_TAKE = 60 * MINUTE;

    private static final long SETTLES_AFTER_HANDS = 40 * MINUTE;
    private static final int LEVEL_SAMPLES = 4;

    private long lightSince;
    private long flownAt;
    private double idleHours;
    private double flownWhileLight;
    private double idleWhileLight;

    Emptiness copy() {
        try {
            return (Emptiness) clone();
        } catch (CloneNotSupportedException e) {
            throw new AssertionError(e);
        }
    }

    /** Whether the weight has been below a limit for a while, a short one once the colony was seen to leave. */
    boolean light(TrapSeries series, int at, double levelKg, double limitKg, boolean left) {
        long now = series.timeMillis(at);
        if (levelKg < limitKg) {
            lightSince = lightSince == 0 ? now : lightSince;
        } else if (!Double.isNaN(levelKg)) {
            heavyAgain();
        }
        return lightSince != 0 && now - lightSince > (left ? 10 : 40) * MINUTE;
    }

    void heavyAgain() {
        lightSince = 0;
        flownWhileLight = 0;
        idleWhileLight = 0;
    }

    /**
     * Takes a step of a trap that is light, and tells whether its bees have flown long enough as on the days before: a
     * scale that jumped takes the weight away and leaves the bees.
     */
    boolean fliesAsBefore(TrapSeries series, int at, FlightStep flight) {
        if (flight.fit() && flight.perMinute() >= Math.max(2, 0.5 * FormerDays.usualPerMinute(series, at))) {
            flownWhileLight += flight.hours();
        } else if (flight.fit()) {
            idleWhileLight += flight.hours();
        }
        return flownWhileLight > SETTLES_HOURS;
    }

    /** Whether the scale has lost the swarm's weight, for however short a time. */
    boolean lost() {
        return lightSince != 0;
    }

    boolean nobodyFliesSinceItIsLight() {
        return idleWhileLight > SETTLES_HOURS;
    }

    /**
     * Takes a step, and tells whether next to nothing has passed for so long that a colony of any size would have flown.
     *
     * @param heavy whether the scale still has the swarm's weight
     * @param handsAt when hands were last at the trap: what the scale has after them says nothing until bees have flown
     */
    boolean idle(FlightStep flight, long now, boolean heavy, long handsAt) {
        flownAt = flight.perMinute() > 2 ? now : flownAt;
        boolean kept = heavy && flownAt > handsAt;
        if (flight.fit() && flight.perMinute() < 0.7) {
            idleHours += flight.hours();
        } else if (flight.fit() && flight.perMinute() > 2) {
            idleHours = Math.max(0, idleHours - 3 * flight.hours());
        }
        return idleHours > (kept ? IDLE_HOURS_WHILE_HEAVY : IDLE_HOURS);
    }

    /**
     * Whether most of the swarm's weight went while hands were at the trap: the box that comes back may be a little
     * heavier.
     *
     * @param baseKg the level before the swarm came
     */
    static boolean handedOut(TrapSeries series, int at, long handsAt, double baseKg, double swarmKg) {
        int before = series.lastAt(handsAt - HANDS_TAKE);
        if (series.timeMillis(at) - handsAt < SETTLES_AFTER_HANDS || before < LEVEL_SAMPLES) {
            return false;
        }
        double level = series.median(Quantity.WEIGHT, at - LEVEL_SAMPLES, at);
        double went = series.median(Quantity.WEIGHT, before - LEVEL_SAMPLES, before) - level;
        return went > 0.6 * swarmKg && level < baseKg + 0.75 * swarmKg;
    }
}
