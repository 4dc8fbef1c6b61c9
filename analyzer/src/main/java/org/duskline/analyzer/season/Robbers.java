package org.duskline.analyzer.season;

/**
 * Bees that strip old comb: frantic from early until dusk for a day or two, while the weight falls by hours (P).
 */
final class Robbers implements Spell, Traffic, Load {
    private final double start;
    private final double end;
    private final double peak;
    private final Curve passages;
    private final Curve carried;
    private final double lossKg;

    Robbers(World world, Weather weather, Dice dice, double start, double endAtLatest) {
        this.start = start;
        double lasts = dice.lognormal(16 * 3600, 0.7, 3 * 3600, 3 * 86400);
        this.end = Math.min(start + lasts, endAtLatest);
        double busy = dice.lognormal(16, 0.7, 4, 90);
        this.lossKg = dice.lognormal(0.25, 0.7, 0.05, 1.2);
        double[] seen = {0, 0};
        Wandering restless = new Wandering(dice, Curve.STEP, 2400);
        this.passages = Curve.fill(start, end, t -> {
            double onset = Math.min(1, (t - start) / 3600 + 0.2);
            // Robbers start early and end late: they fly in poorer light and chill than foragers.
            double flying = Math.sqrt(weather.flight(t));
            double rate = busy * onset * flying * Math.exp(0.25 * restless.next());
            seen[0] = Math.max(seen[0], rate);
            seen[1] += rate;
            return rate;
        });
        this.peak = seen[0];
        double whole = Math.max(1e-9, seen[1]);
        double[] sum = {0};
        this.carried = Curve.fill(start, end, t -> {
            sum[0] += passages.at(t) / whole;
            return lossKg * Math.min(1, sum[0]);
        });
    }

    @Override
    public void add(double t, Flow flow) {
        if (covers(t)) {
            double each = passages.at(t) / 2;
            flow.add(each, each);
        }
    }

    /** What has been carried away so far; it never comes back. */
    @Override
    public double kg(double t) {
        return t < start ? 0 : -carried.at(t);
    }

    @Override
    public double start() {
        return start;
    }

    @Override
    public double end() {
        return end;
    }

    double peakPassages() {
        return peak;
    }

    double lossKg() {
        return lossKg;
    }
}
