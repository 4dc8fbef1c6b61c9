package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.List;
import org.duskline.analyzer.season.TrapTruth.Lodger;

/**
 * Animals at a trap: birds and mice that nest, bumblebees and wasps that settle, ants and spiders before the beams, birds
 * on the lid. Weights are common practice; how often is invented.
 */
final class Lodgers implements Traffic, Load {
    private static final double DAY = 86400;

    private final World world;
    private final Weather weather;
    private final Dice dice;
    private final List<Lodger> all = new ArrayList<>();
    private final Active<Lodger> forTraffic;
    private final Active<Lodger> forWeight;
    private final double[] sum = new double[1];

    Lodgers(World world, Weather weather, Dice dice, Level level, Story story) {
        this.world = world;
        this.weather = weather;
        this.dice = dice;
        double busy = level.nuisances();
        settle("bird", 0.05 * busy, 0.02, 0.06, 0.5, story);
        settle("mouse", 0.05 * busy, 0.03, 0.12, 0.4, story);
        settle("bumblebee", 0.07 * busy, 0.02, 0.1, 0.9, story);
        settle("wasp", 0.07 * busy, 0.005, 0.1, 0.8, story);
        crawl("ants", "trail", 0.03 * busy, 5 * 3600, 4);
        crawl("spider", "web", 0.012 * busy, 4 * 3600, 3);
        perch(dice.lognormal(0.5, 1.1, 0.02, 6) * busy);
        this.forTraffic = new Active<>(all);
        this.forWeight = new Active<>(all);
    }

    /** One that nests until the swarm comes, the keeper clears it out, or it leaves. */
    private void settle(String kind, double chance, double lightKg, double heavyKg, double passages, Story story) {
        if (!dice.chance(Math.min(0.5, chance))) {
            return;
        }
        double start = dice.uniform(world.startSecond() - 5 * DAY, world.endSecond() - 10 * DAY);
        double end = Math.min(start + dice.lognormal(25, 0.5, 5, 70) * DAY, story.gone());
        for (Story.Stay stay : story.stays) {
            if (start < stay.colony().end() && stay.colony().start() < end) {
                end = stay.colony().start() - 6 * 3600;
            }
        }
        if (end > start + DAY && end > world.startSecond()) {
            double peak = dice.lognormal(passages, 0.5, 0.1, 3);
            all.add(new Lodger(start, end, kind, "nest", dice.uniform(lightKg, heavyKg), peak));
        }
    }

    private void crawl(String kind, String what, double perDay, double seconds, double rate) {
        for (double start : dice.moments(world.startSecond(), world.endSecond(), perDay)) {
            double end = start + dice.lognormal(seconds, 0.7, 900, 20 * 3600);
            all.add(new Lodger(start, end, kind, what, 0, dice.lognormal(rate, 0.8, 0.4, 30)));
        }
    }

    /** Birds of 10 to 20 g (M), now and then one ten times as heavy (invented), for seconds to minutes. */
    private void perch(double perDay) {
        for (double start : dice.moments(world.startSecond(), world.endSecond(), perDay)) {
            if (weather.sunHeight(start) > -2) {
                double kg = dice.chance(0.8) ? dice.uniform(0.009, 0.022) : dice.lognormal(0.1, 0.5, 0.03, 0.5);
                double end = start + dice.lognormal(70, 0.9, 8, 1500);
                all.add(new Lodger(start, end, "bird", "perch", kg, 0));
            }
        }
    }

    @Override
    public void add(double t, Flow flow) {
        forTraffic.forEach(t, one -> {
            double rate = one.peakPassagesPerMin() * activity(one, t) / 2;
            if (rate > 0) {
                double lean = one.what().equals("nest") ? 0 : dice.uniform(-0.4, 0.4);
                flow.add(rate * (1 + lean), rate * (1 - lean));
            }
        });
    }

    private double activity(Lodger one, double t) {
        double grown = Math.min(1, 0.15 + (t - one.start()) / (20 * DAY));
        return switch (one.kind()) {
            // In the shade of dusk and at 8 degrees a bumblebee still flies (memory).
            case "bumblebee" -> grown * Weather.ramp(weather.celsius(t), 5, 12) * light(t);
            case "wasp" -> grown * Weather.ramp(weather.celsius(t), 8, 16) * light(t);
            case "bird" -> one.what().equals("nest") ? 0.5 * light(t) : 0;
            case "mouse" -> weather.sunHeight(t) < -4 ? 0.5 : 0.02;
            case "ants" -> Weather.ramp(weather.celsius(t), 9, 18) * dice.uniform(0.3, 1.7);
            default -> Weather.ramp(weather.wind(t), 0.3, 3) * dice.exponential(1);
        };
    }

    private double light(double t) {
        return Weather.ramp(weather.sunHeight(t), -3, 3);
    }

    @Override
    public double kg(double t) {
        sum[0] = 0;
        forWeight.forEach(t, one -> sum[0] += weighs(one, t));
        return sum[0];
    }

    private double weighs(Lodger one, double t) {
        double age = (t - one.start()) / DAY;
        return switch (one.kind()) {
            case "bird" ->
                one.what().equals("perch")
                        ? one.kg()
                        : one.kg() * Math.min(1, age / 6)
                                + 0.016 * presence(one, t, weather.sunHeight(t) < 0 ? 0.97 : 0.4);
            case "mouse" ->
                one.kg() * Math.min(1, age / 10) + 0.025 * presence(one, t, weather.sunHeight(t) < -4 ? 0.4 : 0.95);
            default -> one.kg() * Math.min(1, age / 40);
        };
    }

    /** Whether it is at home in this quarter of an hour: the same answer whenever asked. */
    private static double presence(Lodger one, double t, double chance) {
        long slot = (long) Math.floor(t / 900);
        return new Dice(slot * 31 + (long) one.start()).chance(chance) ? 1 : 0;
    }

    List<Lodger> truth() {
        return List.copyOf(all);
    }
}
