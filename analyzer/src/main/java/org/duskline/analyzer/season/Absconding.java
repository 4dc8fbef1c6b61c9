package org.duskline.analyzer.season;

/**
 * A colony that leaves: out within minutes in flight weather. What it had stored stays.
 *
 * @param start first bees leave, Unix seconds
 * @param end the last have left
 * @param bees how many leave
 * @param massKg their mass
 * @param leftKg stores that stay behind
 */
record Absconding(double start, double end, int bees, double massKg, double leftKg) implements Spell, Traffic, Load {

    static Absconding of(Dice dice, Colony colony, double start) {
        double minutes = dice.lognormal(11, 0.35, 5, 25);
        double left = Math.max(0, colony.storesKg(start - 60));
        double mass = Math.max(0.1, colony.kg(start - 60) - left);
        return new Absconding(start, start + minutes * 60, colony.swarm().bees(), mass, left);
    }

    private double gone(double t) {
        double share = Math.max(0, Math.min(1, (t - start) / (end - start)));
        return share * share * (3 - 2 * share);
    }

    @Override
    public void add(double t, Flow flow) {
        if (t >= start - 15 && t < end + 15) {
            double perMinute = bees * (gone(t + 15) - gone(t - 15)) * 2;
            flow.add(0.08 * perMinute, 1.08 * perMinute);
        }
    }

    @Override
    public double kg(double t) {
        return t < start ? 0 : massKg * (1 - gone(t)) + leftKg;
    }
}
