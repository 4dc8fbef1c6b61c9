package org.duskline.analyzer.season;

import java.util.Locale;

/** One swarm coming to a trap: when, how heavy, and how it goes in. */
final class Swarm implements Spell, Traffic {
    /** How it comes. Clinging: the cluster hangs on the trap first. Branch: it waits beside it. Shares are invented. */
    enum Style {
        STRAIGHT,
        CLINGING,
        BRANCH;

        String wireName() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private static final double MINUTE = 60;
    /** Share that is in when the entry counts as over; the rest straggles until dusk (P). */
    private static final double MOST = 0.97;

    private final double start;
    private final double entry;
    private final double minutes;
    private final double gatherMinutes;
    private final double massKg;
    private final int bees;
    private final double skew;
    private final double milling;
    private final double stragglerSeconds;
    private final Style style;

    Swarm(Dice dice, double start) {
        // Mean 1.42 kg, 0.17 to 4.30 (R12); 6 to 35 minutes, up to 60 (M, R20).
        this(
                dice,
                start,
                dice.chance(0.65) ? Style.STRAIGHT : dice.chance(0.5) ? Style.CLINGING : Style.BRANCH,
                dice.lognormal(1.28, 0.5, 0.17, 4.3),
                dice.chance(0.05) ? dice.uniform(35, 60) : dice.lognormal(15, 0.42, 6, 35));
    }

    Swarm(Dice dice, double start, Style style, double massKg, double minutes) {
        this.start = start;
        this.style = style;
        this.massKg = massKg;
        this.minutes = minutes;
        // 0.08 to 0.15 g a bee (R13, D).
        this.bees = (int) Math.round(massKg / dice.uniform(0.000095, 0.00014));
        this.gatherMinutes = dice.uniform(3, 12);
        double wait = switch (style) {
            case STRAIGHT -> 0;
            case CLINGING -> gatherMinutes + dice.uniform(1, 25);
            case BRANCH -> dice.uniform(4, 40);
        };
        this.entry = start + wait * MINUTE;
        this.skew = dice.uniform(0.65, 1.3);
        this.milling = dice.uniform(0.04, 0.3);
        this.stragglerSeconds = dice.uniform(1800, 3 * 3600);
    }

    /** Share of the bees inside. */
    double inside(double t) {
        if (t <= entry) {
            return 0;
        }
        double share = (t - entry) / (minutes * MINUTE);
        if (share < 1) {
            double bent = Math.pow(share, skew);
            return MOST * bent * bent * (3 - 2 * bent);
        }
        return 1 - (1 - MOST) * Math.exp(-(t - end()) / stragglerSeconds);
    }

    /** What the scale feels of it, kg. */
    double felt(double t) {
        if (style != Style.CLINGING || t <= start) {
            return massKg * inside(t);
        }
        double gathered = Math.min(1, (t - start) / (gatherMinutes * MINUTE));
        return massKg * Math.max(0.96 * gathered, inside(t));
    }

    @Override
    public void add(double t, Flow flow) {
        if (t < start || t > end() + 6 * stragglerSeconds) {
            return;
        }
        double perMinute = bees * (inside(t + 15) - inside(t - 15)) * 2;
        // Before the entry some run in and out again; during it some turn back (invented shares).
        double restless = t < entry ? bees * 0.0015 : perMinute * milling;
        flow.add(perMinute + restless, restless);
    }

    /** When half of them are inside. */
    double half() {
        double low = entry;
        double high = end();
        while (high - low > 0.5) {
            double middle = (low + high) / 2;
            if (inside(middle) < 0.5) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    @Override
    public double start() {
        return start;
    }

    @Override
    public double end() {
        return entry + minutes * MINUTE;
    }

    double massKg() {
        return massKg;
    }

    int bees() {
        return bees;
    }

    Style style() {
        return style;
    }
}
