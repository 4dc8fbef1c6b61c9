package org.duskline.analyzer.season;

import java.util.List;

/** The load cell and its board: what it reads of the true weight, with drift, creep, wind, noise, steps and faults. */
final class Scale {
    private static final double DAY = 86400;
    /** Shake of the box above which a spell counts as a storm in the truth, kg. */
    static final double STORM_KG = 0.06;

    private final Weather weather;
    private final Site site;
    private final List<Load> loads;
    private final Hands hands;
    private final Warmth warmth;
    private final Faults faults;
    private final Dice dice;
    private final double kgPerDegree;
    private final double gain;
    private final double noise;
    private final double grain;
    private final double creepKg;
    private final double creepDays;
    private final double start;
    private final Curve wander;
    private double jumped;
    private final List<TrapTruth.Fault> sudden;
    private int next;
    private double wild;
    private double stuckAt = Double.NaN;
    private double deviation;

    Scale(
            World world,
            Weather weather,
            Site site,
            List<Load> loads,
            Hands hands,
            Warmth warmth,
            Faults faults,
            Dice dice) {
        this.weather = weather;
        this.site = site;
        this.loads = List.copyOf(loads);
        this.hands = hands;
        this.warmth = warmth;
        this.faults = faults;
        this.dice = dice;
        this.start = world.startSecond();
        this.sudden = faults.truth().stream()
                .filter(f -> f.kind().equals("tare_jump") || f.kind().equals("spike"))
                .toList();
        // Classed cells 0.7 g a degree (R41, D); unclassed 1 to 5 (M), either sign.
        this.kgPerDegree = dice.lognormal(0.0024, 0.7, 0.0004, 0.01) * (dice.chance(0.5) ? 1 : -1);
        this.gain = dice.gauss(1, 0.006);
        this.noise = dice.lognormal(0.004, 0.5, 0.001, 0.015);
        this.grain = dice.pick(List.of(0.001, 0.001, 0.002, 0.005, 0.01));
        // Creep 25 to 100 g in weeks (M).
        this.creepKg = dice.uniform(0.005, 0.1);
        this.creepDays = dice.uniform(3, 20);
        Wandering slow = new Wandering(dice.fork("wander"), Curve.STEP, DAY);
        double grams = dice.lognormal(0.006, 0.7, 0.001, 0.03);
        this.wander = Curve.fill(start, world.endSecond(), t -> grams * slow.next());
    }

    /** The weight a sample carries, kg. */
    double read(double t) {
        step(t);
        double mean = measured(t);
        if (faults.covering("saturated", t) != null) {
            return 83.886;
        }
        if (faults.covering("stuck_weight", t) != null) {
            stuckAt = Double.isNaN(stuckAt) ? round(mean) : stuckAt;
            return stuckAt;
        }
        stuckAt = Double.NaN;
        return Double.isNaN(wild) ? round(mean) : wild;
    }

    private void step(double t) {
        wild = Double.NaN;
        while (next < sudden.size() && sudden.get(next).start() <= t) {
            TrapTruth.Fault fault = sudden.get(next++);
            if (fault.kind().equals("tare_jump")) {
                jumped += fault.kg();
            } else {
                wild = fault.kg();
            }
        }
    }

    private double measured(double t) {
        double handsKg = hands.kg(t);
        double hanging = 0;
        for (Load load : loads) {
            hanging += load.kg(t);
        }
        // An unhooked box leaves the strap; a tared scale then reads minus the box.
        double box = hands.hung(t) ? hanging : -site.woodKg() - 1;
        double drift = kgPerDegree * (warmth.cell(t) - 15) + wander.at(t);
        double creep = creepKg * (1 - Math.exp(-(t - start) / DAY / creepDays));
        double shake = shakeKg(weather, site, t);
        deviation = Math.hypot(noise * 1.5, shake) * dice.lognormal(1, 0.25, 0.4, 2.5);
        double error = Math.hypot(noise, shake * 0.3) * dice.gauss();
        return (site.boxKg() + box + handsKg) * gain + jumped + drift + creep + error;
    }

    /** Deviation of the shaking box: with the square of the wind, 50 to 300 g in a gale (P). */
    static double shakeKg(Weather weather, Site site, double t) {
        double wind = weather.wind(t - site.rainLate());
        return Math.min(0.3, site.windShake() / 1000 * (wind / 5) * (wind / 5));
    }

    /** Deviation within the averaging window of the sample last read, kg. */
    double deviation() {
        return deviation;
    }

    private double round(double kg) {
        return Math.round(kg / grain) * grain;
    }

    double kgPerDegree() {
        return kgPerDegree;
    }
}
