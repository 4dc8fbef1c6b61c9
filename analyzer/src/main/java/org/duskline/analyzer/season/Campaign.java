package org.duskline.analyzer.season;

/**
 * Scouts of one swarm at one trap, from the first inspection until the swarm comes or loses interest. They fly in flight
 * weather only, go home at night and weigh nothing.
 */
final class Campaign implements Spell, Traffic {
    private static final double HOUR = 3600;
    /** Passages a minute that count as scouting worth telling; the definition of an arrival's lead. */
    private static final double WORTH_TELLING = 1;

    private final double start;
    private final double end;
    private final Curve passages;
    private final double peakScouts;
    private final double peakPassages;
    private final double flightHours;
    private final double noticed;

    private Campaign(Weather weather, Dice dice, double start, double end, double crossingsPerHour, Growth growth) {
        this.start = start;
        this.end = end;
        // Crossings of one scout: 40 to 80 an hour (D, from dozens of one-minute trips in 40 minutes, R2, R23).
        Wandering restless = new Wandering(dice, Curve.STEP, 0.5 * HOUR);
        double[] sums = {0, 0, 0, Double.NaN};
        this.passages = Curve.fill(start, end, t -> {
            double flying = Math.min(1, 1.4 * weather.flight(t));
            sums[0] += flying * Curve.STEP / HOUR;
            double scouts = growth.scouts(sums[0], t) * flying;
            double rate = scouts * crossingsPerHour / 60 * Math.exp(0.35 * restless.next() - 0.06);
            sums[1] = Math.max(sums[1], scouts);
            sums[2] = Math.max(sums[2], rate);
            if (Double.isNaN(sums[3]) && rate > WORTH_TELLING) {
                sums[3] = t;
            }
            return rate;
        });
        this.flightHours = sums[0];
        this.peakScouts = sums[1];
        this.peakPassages = sums[2];
        this.noticed = sums[3];
    }

    private interface Growth {
        double scouts(double flightHours, double t);
    }

    /** The scouting that leads to an arrival: walked back from it through the hours of flight. */
    static Campaign winning(Weather weather, Dice dice, double arrival, double massKg, double notBefore) {
        // About 20 daylight hours of scouting (R12), from a few hours to ten days (M); some almost none (invented
        // share).
        boolean shortNotice = dice.chance(0.1);
        double hours = shortNotice ? dice.uniform(0.1, 0.7) : dice.lognormal(11, 0.8, 1.2, 60);
        double start = back(weather, arrival, hours, notBefore);
        // At the quorum 10 to 30 are at the box (R24, M); big swarms send more: 3 to 4 % visit in all (R21).
        double quorum = dice.lognormal(17, 0.4, 7, 45) * Math.pow(massKg / 1.4, 0.3);
        double bend = dice.uniform(0.7, 2.4);
        // A lull of 10 to 60 minutes before the arrival is possible (M); its share is invented.
        double lull = dice.chance(0.3) ? dice.uniform(600, 3600) : 0;
        double hush = dice.uniform(0.15, 0.5);
        double all = Math.max(0.1, hoursBetween(weather, start, arrival));
        Growth growth = (done, t) -> {
            double grown = Math.exp(Math.log(quorum) * Math.pow(Math.min(1, done / all), bend));
            return t > arrival - lull ? grown * hush : grown;
        };
        return new Campaign(weather, dice, start, arrival + 600, dice.uniform(40, 80), growth);
    }

    /** A scouting that comes to nothing: it grows, and attrition ends it (R28). */
    static Campaign losing(Weather weather, Dice dice, double start, double endAtLatest) {
        double hours = dice.lognormal(5, 0.9, 0.6, 40);
        double top = dice.lognormal(6, 0.8, 1.5, 45);
        double summit = dice.uniform(0.3, 0.85);
        double end = Math.min(forth(weather, start, hours), endAtLatest);
        Growth growth = (done, t) -> {
            double share = Math.min(1, done / hours);
            return share < summit
                    ? Math.exp(Math.log(top) * share / summit)
                    : top * Math.max(0, (1 - share) / (1 - summit));
        };
        return new Campaign(weather, dice, start, end, dice.uniform(40, 80), growth);
    }

    private static double back(Weather weather, double from, double hours, double notBefore) {
        double left = hours;
        double t = from;
        double lastFlown = from - Curve.STEP;
        while (left > 0 && t > notBefore) {
            t -= Curve.STEP;
            double flying = Math.min(1, 1.4 * weather.flight(t));
            left -= flying * Curve.STEP / HOUR;
            lastFlown = flying > 0.35 ? t : lastFlown;
        }
        return lastFlown;
    }

    private static double forth(Weather weather, double from, double hours) {
        double left = hours;
        double t = from;
        while (left > 0 && t < from + 14 * 86400) {
            t += Curve.STEP;
            left -= Math.min(1, 1.4 * weather.flight(t)) * Curve.STEP / HOUR;
        }
        return t;
    }

    private static double hoursBetween(Weather weather, double from, double until) {
        double sum = 0;
        for (double t = from; t < until; t += Curve.STEP) {
            sum += Math.min(1, 1.4 * weather.flight(t)) * Curve.STEP / HOUR;
        }
        return sum;
    }

    @Override
    public double start() {
        return start;
    }

    @Override
    public double end() {
        return end;
    }

    @Override
    public void add(double t, Flow flow) {
        if (covers(t)) {
            double each = passages.at(t) / 2;
            flow.add(each, each);
        }
    }

    double peakScouts() {
        return peakScouts;
    }

    double peakPassages() {
        return peakPassages;
    }

    double flightHours() {
        return flightHours;
    }

    /** Hours from the traffic first passing one a minute until a moment; 0 if it never did. */
    double leadHours(double arrival) {
        return Double.isNaN(noticed) ? 0 : Math.max(0, (arrival - noticed) / HOUR);
    }
}
