package org.duskline.analyzer.season;

/**
 * A swarm that has moved in, until it leaves or is taken: its foraging, the dip at dawn and the return by dusk, its
 * stores, orientation flights and warmth.
 */
final class Colony implements Spell, Traffic, Load {
    private static final double HOUR = 3600;
    private static final double DAY = 86400;
    /** Leaving a minute for each bee: N = 3 f / 0.0138 (R33). */
    private static final double LEAVING_A_BEE = 0.0138 / 3;
    /** Load of an arriving forager, kg (R34). */
    private static final double LOAD_KG = 0.00002;

    private final Swarm swarm;
    private final double end;
    private final double tripSeconds;
    private final Curve leaving;
    private final Curve playing;
    private final Curve stores;
    private final Curve guards;

    Colony(World world, Weather weather, Dice dice, Swarm swarm, double end) {
        this.swarm = swarm;
        this.end = end;
        this.tripSeconds = dice.uniform(20, 50) * 60;
        // Little traffic on the first day (R20); full strength after some days (invented).
        double firstDay = dice.uniform(0.1, 0.4);
        double settleDays = dice.uniform(1, 4);
        double vigour = dice.lognormal(1, 0.35, 0.35, 2);
        double from = swarm.start();
        this.leaving = Curve.fill(from, end, t -> {
            double age = Math.max(0, (t - swarm.end()) / DAY);
            double settled = firstDay + (1 - firstDay) * Math.min(1, age / settleDays);
            // Old bees die before the first brood hatches after three weeks.
            double people = age < 22 ? 1 - 0.012 * age : 0.74 + 0.03 * (age - 22);
            double work = Math.min(1, 1.3 * weather.flight(t)) * settled * people * vigour;
            return swarm.bees() * LEAVING_A_BEE * work * swarm.inside(t);
        });
        this.playing = play(world, weather, dice.fork("play"), from, end);
        this.stores = hoard(weather, dice.fork("stores"), from, end);
        double idle = dice.uniform(0, 0.25);
        this.guards = Curve.fill(from, end, t -> swarm.inside(t) * idle * Weather.ramp(weather.celsius(t), 11, 24));
    }

    /** Orientation flights: warm calm afternoons, 14 to 17 h, bursts of 30 to 45 minutes (R36). */
    private Curve play(World world, Weather weather, Dice dice, double from, double until) {
        double[] burst = {0, 0, 0};
        return Curve.fill(from, until, t -> {
            double hour = world.solarHour(t);
            boolean warmAndCalm = weather.celsius(t) > 16 && weather.flight(t) > 0.4;
            if (t > burst[1] + 2 * HOUR && hour > 13 && hour < 16.5 && warmAndCalm && dice.chance(0.1)) {
                burst[0] = t;
                burst[1] = t + dice.uniform(1500, 3000);
                burst[2] = swarm.bees() / 11000.0 * dice.lognormal(18, 0.6, 3, 80);
            }
            return t >= burst[0] && t < burst[1] && t > swarm.end() + HOUR ? burst[2] * weather.flight(t) : 0;
        });
    }

    private Curve hoard(Weather weather, Dice dice, double from, double until) {
        // Night loss 30 to 150 g (M-), net day -0.2 to +1 kg (M).
        double nightLoss = dice.uniform(0.03, 0.15) * Math.sqrt(swarm.bees() / 11000.0);
        Wandering flow = new Wandering(dice, Curve.STEP, 3 * DAY);
        double[] kg = {0};
        return Curve.fill(from, until, t -> {
            double full = Math.max(0, 0.45 + 0.3 * flow.next());
            double brought = leaving.at(t - tripSeconds) * LOAD_KG * full * Curve.STEP / 60;
            double eaten = nightLoss * Curve.STEP / (weather.flight(t) < 0.05 ? 11 * HOUR : 26 * HOUR);
            double share = swarm.inside(t);
            kg[0] = Math.max(-0.25 * swarm.massKg(), kg[0] + share * (brought - eaten));
            return kg[0];
        });
    }

    @Override
    public void add(double t, Flow flow) {
        if (covers(t)) {
            double still = guards.at(t);
            double play = playing.at(t);
            flow.add(leaving.at(t - tripSeconds) * flown(t) + play + still, leaving.at(t) + play + still);
        }
    }

    /** Nobody returns before the first trip is over. */
    private double flown(double t) {
        return t - tripSeconds > swarm.start() ? 1 : 0;
    }

    /** Bees outside weigh nothing here; empty bees of 0.088 g (D). */
    private double outsideKg(double t) {
        double minutes = (Math.min(t, end) - Math.max(swarm.start(), t - tripSeconds)) / 60;
        double middle = Math.max(swarm.start(), t - tripSeconds / 2);
        return leaving.at(middle) * Math.max(0, minutes) * 0.000088;
    }

    @Override
    public double kg(double t) {
        if (t < swarm.start()) {
            return 0;
        }
        if (t >= end) {
            return 0;
        }
        return swarm.felt(t) + stores.at(t) - outsideKg(t);
    }

    double storesKg(double t) {
        return stores.at(t);
    }

    /** Share of a full nest's warmth. */
    double warmth(double t) {
        return t < end ? swarm.inside(t) * Math.min(1, 0.45 + swarm.massKg() / 2.5) : 0;
    }

    Swarm swarm() {
        return swarm;
    }

    @Override
    public double start() {
        return swarm.start();
    }

    @Override
    public double end() {
        return end;
    }
}
