package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.List;

/** Bees that belong elsewhere: those of a near apiary, homeless ones after a collection, and rare single visitors. */
final class Passing implements Traffic {
    private static final double DAY = 86400;

    private final Weather weather;
    private final List<TrapTruth.Passers> neighbours = new ArrayList<>();
    private final List<TrapTruth.Passers> strays = new ArrayList<>();
    private final Active<TrapTruth.Passers> activeNeighbours;
    private final Active<TrapTruth.Passers> activeStrays;
    private final double visitorsPerMinute;

    Passing(World world, Weather weather, Site site, Dice dice, Level level, Story story) {
        this.weather = weather;
        if (site.apiaryNear()) {
            // Their orientation flights on warm calm afternoons, in bursts (R36); strength here is invented.
            for (double t : dice.moments(world.startSecond(), world.endSecond(), 0.25 * level.nuisances())) {
                if (weather.flight(t) > 0.4 && world.solarHour(t) > 11 && world.solarHour(t) < 17.5) {
                    double end = t + dice.uniform(700, 2700);
                    neighbours.add(new TrapTruth.Passers(t, end, dice.lognormal(3, 0.7, 0.5, 25)));
                }
            }
        }
        for (Story.Stay stay : story.stays) {
            boolean over = stay.left() || !Double.isNaN(stay.collectedAt());
            if (over && dice.chance(0.6)) {
                double from = stay.left() ? stay.leaving().end() : stay.collectedAt() + 1200;
                double rate = dice.lognormal(1.2, 0.8, 0.2, 8);
                strays.add(new TrapTruth.Passers(from, from + dice.uniform(0.5, 2.5) * DAY, rate));
            }
        }
        this.activeNeighbours = new Active<>(neighbours);
        this.activeStrays = new Active<>(strays);
        this.visitorsPerMinute = dice.lognormal(0.009, 1, 0.001, 0.12)
                * Math.sqrt(level.nuisances())
                * (site.apiaryNear() ? 2 : 1)
                * (site.oldComb() ? 1.5 : 1);
    }

    @Override
    public void add(double t, Flow flow) {
        double flying = weather.flight(t);
        double each = visitorsPerMinute * flying;
        flow.add(each, each);
        activeNeighbours.forEach(t, p -> {
            double share = (t - p.start()) / (p.end() - p.start());
            double rate = p.peakPassagesPerMin() * Math.sin(Math.PI * share) / 2;
            flow.add(rate, rate);
        });
        activeStrays.forEach(t, p -> {
            double rate = p.peakPassagesPerMin() * flying * Math.exp(-2 * (t - p.start()) / DAY) / 2;
            flow.add(rate, rate);
        });
    }

    List<TrapTruth.Passers> neighbours() {
        return List.copyOf(neighbours);
    }

    List<TrapTruth.Passers> strays() {
        return List.copyOf(strays);
    }
}
