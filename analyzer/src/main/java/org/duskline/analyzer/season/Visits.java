package org.duskline.analyzer.season;

import java.util.List;

/** When hands are at a trap: the keeper's looks, people passing by, and falls. */
final class Visits {
    private static final double DAY = 86400;
    private static final double HOUR = 3600;

    private final World world;
    private final Weather weather;
    private final Dice dice;
    private final Level level;

    Visits(World world, Weather weather, Dice dice, Level level) {
        this.world = world;
        this.weather = weather;
        this.dice = dice;
        this.level = level;
    }

    void add(List<TrapTruth.Handling> handlings, List<Story.Stay> stays, double until) {
        boolean writesDown = dice.chance(0.6);
        double every = world.visitEveryDays() / Math.pow(level.nuisances(), 0.4);
        double t = world.startSecond();
        while (true) {
            t += dice.lognormal(every, 0.5, 0.8, 25) * DAY;
            double start = daylight(t);
            if (start > until - HOUR) {
                break;
            }
            // Bait, a frame, a strip of foundation: grams to a pound stay (invented).
            double shift = dice.chance(0.6)
                    ? dice.gauss(0, 0.012)
                    : dice.chance(0.7) ? dice.uniform(0.005, 0.1) : dice.gauss(0, 0.45);
            place(
                    handlings,
                    stays,
                    new TrapTruth.Handling(
                            start,
                            start + dice.lognormal(360, 0.6, 60, 2400),
                            "visit",
                            "",
                            shift,
                            writesDown && dice.chance(0.85)));
        }
        pass(handlings, stays, until);
    }

    private void pass(List<TrapTruth.Handling> handlings, List<Story.Stay> stays, double until) {
        double days = (until - world.startSecond()) / DAY;
        for (int i = dice.poisson(days * 0.012 * level.nuisances()); i > 0; i--) {
            double start = daylight(dice.uniform(world.startSecond(), until));
            double end = start + dice.lognormal(100, 0.6, 20, 600);
            place(handlings, stays, new TrapTruth.Handling(start, end, "passer-by", "", 0, false));
        }
        // A branch gives way or a strap slips: it hangs askew until it is put right.
        for (int i = dice.poisson(days * 0.0006 * level.nuisances()); i > 0; i--) {
            double start = dice.uniform(world.startSecond() + DAY, until - 3 * DAY);
            double lost = -dice.uniform(0.6, 3.5);
            double right = daylight(start + dice.uniform(0.3, 2) * DAY);
            place(handlings, stays, new TrapTruth.Handling(start, start + 40, "fall", "", lost, false));
            place(handlings, stays, new TrapTruth.Handling(right, right + 900, "visit", "", -lost, true));
        }
    }

    private double daylight(double about) {
        double t = about;
        while (t < world.endSecond() && (weather.sunHeight(t) < 3 || world.solarHour(t) < 8)) {
            t += 900;
        }
        return t + dice.uniform(0, 5 * HOUR) * (world.solarHour(t) < 12 ? 1 : 0.1);
    }

    /** Not over other hands, and not into a swarm that is just moving in. */
    private void place(List<TrapTruth.Handling> handlings, List<Story.Stay> stays, TrapTruth.Handling one) {
        boolean clash =
                handlings.stream().anyMatch(h -> one.start() < h.end() + 2 * HOUR && h.start() < one.end() + 2 * HOUR);
        boolean arriving = stays.stream()
                .map(s -> s.colony().swarm())
                .anyMatch(s -> one.start() < s.end() + HOUR && s.start() < one.end() + HOUR);
        if (!clash && !arriving) {
            handlings.add(one);
        }
    }
}
