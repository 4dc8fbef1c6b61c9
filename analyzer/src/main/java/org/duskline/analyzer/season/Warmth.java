package org.duskline.analyzer.season;

/** Temperatures at a trap: the load cell's own, what the cell's thermometer says, and inside the box. */
final class Warmth {
    private final Curve cell;
    private final Curve shade;
    private final Curve box;
    private final double coupling;

    Warmth(World world, Weather weather, Site site, Dice dice) {
        double from = world.startSecond() - 7200;
        double until = world.endSecond();
        double bias = dice.gauss(0, 0.8);
        double lag = Math.exp(-Curve.STEP / dice.uniform(600, 2400));
        double[] last = {weather.celsius(from), 0};
        this.shade = Curve.fill(from, until, t -> {
            last[0] = lag * last[0] + (1 - lag) * (weather.celsius(t - site.rainLate()) + bias);
            return last[0];
        });
        double sunLag = Math.exp(-Curve.STEP / dice.uniform(900, 3000));
        this.cell = Curve.fill(from, until, t -> {
            double off = world.solarHour(t) - site.sunHour();
            double beam = weather.sunshine(t) * Math.exp(-0.5 * off * off / 4) * site.sunOnCell();
            last[1] = sunLag * last[1] + (1 - sunLag) * beam;
            return shade.at(t) + last[1];
        });
        double boxLag = Math.exp(-Curve.STEP / dice.uniform(3000, 9000));
        double gain = dice.uniform(1, 8);
        double[] inside = {weather.celsius(from)};
        this.box = Curve.fill(from, until, t -> {
            inside[0] = boxLag * inside[0] + (1 - boxLag) * (weather.celsius(t) + gain * weather.sunshine(t));
            return inside[0];
        });
        // How near to the cluster the thermometer hangs; the nest itself is held at 33 to 36 degrees (memory).
        this.coupling = dice.uniform(0.3, 0.9);
    }

    /** The load cell itself, sun on it included. */
    double cell(double t) {
        return cell.at(t);
    }

    /** What the thermometer beside the cell says: it feels less of the sun. */
    double thermometer(double t) {
        return 0.6 * shade.at(t) + 0.4 * cell.at(t);
    }

    double box(double t, double nest) {
        double share = coupling * nest;
        return (1 - share) * box.at(t) + share * 34;
    }
}
