package org.duskline.analyzer.season;

/**
 * Water in the box: what the wood takes up from the air over days, what a rain soaks into it, and what stands on the lid.
 */
final class Wood implements Load {
    private static final double HOUR = 3600;

    private final Curve water;
    private final double zero;

    Wood(World world, Weather weather, Site site, Dice dice, double exposure) {
        double slowHours = dice.uniform(25, 90);
        double quickHours = dice.uniform(2, 6);
        double quickShare = dice.uniform(0.06, 0.3);
        // A rain adds 0.1 to 0.5 kg within minutes and dries in hours to days (P); up to pounds where it pools (R39).
        double soakPerMm = dice.lognormal(0.018, 0.6, 0.004, 0.08) * exposure;
        double soakMost = dice.uniform(0.15, 0.7);
        double poolPerMm = dice.lognormal(0.02, 0.7, 0.003, 0.12) * exposure;
        double poolMost = dice.lognormal(0.12, 0.8, 0.02, 1.0) * exposure;
        double drainHours = dice.uniform(0.4, 8);
        double[] state = {moisture(weather.humidity(world.startSecond())), 0, 0, 0};
        state[1] = state[0];
        double step = Curve.STEP / HOUR;
        this.water = Curve.fill(world.startSecond() - 86400, world.endSecond(), t -> {
            double now = t - site.rainLate();
            double seeks = moisture(weather.humidity(now));
            state[0] += (seeks - state[0]) * step / slowHours;
            state[1] += (seeks - state[1]) * step / quickHours;
            double mm = weather.rain(now) * site.rainShare() * step;
            double drying = 0.25 + 1.5 * weather.sunshine(now) + 0.1 * weather.wind(now);
            double thirst = 1 - state[2] / soakMost;
            state[2] += mm * soakPerMm * thirst - state[2] * step / 18 * drying * (mm > 0 ? 0 : 1);
            state[3] = Math.min(poolMost, state[3] + mm * poolPerMm);
            state[3] -= state[3] * step / drainHours * (mm > 0 ? 0.3 : 1);
            double bound = site.woodKg() * ((1 - quickShare) * state[0] + quickShare * state[1]);
            return bound + state[2] + Math.max(0, state[3]);
        });
        this.zero = water.at(world.startSecond());
    }

    /** Share of water in wood: 6 % at 30 % humidity, 12 at 65, 20 at 90 (M+). */
    private static double moisture(double humidity) {
        if (humidity < 65) {
            return 0.06 + (humidity - 30) / 35 * 0.06;
        }
        return 0.12 + (humidity - 65) / 25 * 0.08;
    }

    @Override
    public double kg(double t) {
        return water.at(t) - zero;
    }
}
