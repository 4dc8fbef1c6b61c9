package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What bees and the keeper do at one trap over the season, decided before the first sample. */
final class Story {
    private static final double DAY = 86400;
    private static final double HOUR = 3600;
    /** A self-chosen trap is left by less than one in twenty, mostly within three days (M-). */
    private static final double LEAVES = 0.05;
    /** Most arrivals are collected (invented share), on the same to the third evening (P). */
    private static final double COLLECTED = 0.92;

    private final World world;
    private final Weather weather;
    private final Site site;
    private final Dice dice;

    final List<Stay> stays = new ArrayList<>();
    final List<Campaign> losing = new ArrayList<>();
    final List<Robbers> robbers = new ArrayList<>();
    final List<TrapTruth.Handling> handlings = new ArrayList<>();
    final List<TrapTruth.BareHook> bare = new ArrayList<>();
    private final List<double[]> empty = new ArrayList<>();
    private double gone;

    /** One swarm's stay: its scouts, the colony, and how it ended. */
    record Stay(Campaign scouts, Colony colony, boolean shortNotice, double collectedAt, Absconding leaving) {
        boolean left() {
            return leaving != null;
        }
    }

    Story(World world, Weather weather, Site site, Dice dice, Level level) {
        this.world = world;
        this.weather = weather;
        this.site = site;
        this.dice = dice;
        this.gone = world.endSecond();
        fill();
        lose(dice.fork("losing"));
        rob(dice.fork("robbing"), level);
        keep(level);
    }

    /** A story of which the swarms are written, and some of the rest. */
    Story(World world, Weather weather, Site site, Dice dice, Level level, Script script) {
        this.world = world;
        this.weather = weather;
        this.site = site;
        this.dice = dice;
        this.gone = world.endSecond();
        fill(script);
        lose(dice.fork("losing"));
        for (Script.Scouted scouted : script.losing()) {
            Dice own = dice.fork("written" + losing.size());
            losing.add(Campaign.losing(weather, own, scouted.from(), scouted.until()));
        }
        for (double at : script.robbings()) {
            robbers.add(new Robbers(world, weather, dice.fork("robbers" + at), at, world.endSecond()));
        }
        handlings.addAll(script.visits());
        keep(level);
    }

    private void fill(Script script) {
        double t = world.startSecond();
        for (Script.Arrival written : script.swarms()) {
            double at = written.exact() ? written.at() : settle(written.at());
            Swarm swarm = new Swarm(
                    dice.fork("swarm" + stays.size()), at, Swarm.Style.STRAIGHT, written.massKg(), written.minutes());
            Campaign scouts = Campaign.winning(
                    weather, dice.fork("scouts" + stays.size()), at, swarm.massKg(), Math.max(t + 600, at - 2 * DAY));
            empty.add(new double[] {t, scouts.start()});
            double end = written.collected() ? weather.sunset(swarm.end() + DAY) + 2400 : world.endSecond();
            Colony colony = new Colony(world, weather, dice.fork("colony" + stays.size()), swarm, end);
            stays.add(new Stay(scouts, colony, false, written.collected() ? end : Double.NaN, null));
            t = end;
            if (written.collected()) {
                handlings.add(new TrapTruth.Handling(end, end + 1100, "collection", "rehung", 0.2, true));
                t = end + 1100;
            }
        }
        empty.add(new double[] {t, world.endSecond()});
    }

    private void keep(Level level) {
        Visits visits = new Visits(world, weather, dice.fork("visits"), level);
        visits.add(handlings, stays, gone);
        handlings.sort(Comparator.comparingDouble(TrapTruth.Handling::start));
    }

    private void fill() {
        double t = world.startSecond();
        while (t < world.endSecond()) {
            double days = dice.exponential(30 / (world.swarmsPerTrapMonth() * site.attraction()));
            double arrival = settle(Math.max(t + 0.4 * DAY, t + days * DAY));
            if (arrival > world.endSecond() - 2 * HOUR) {
                empty.add(new double[] {t, world.endSecond()});
                return;
            }
            Swarm swarm = new Swarm(dice.fork("swarm" + stays.size()), arrival);
            Campaign scouts = Campaign.winning(
                    weather,
                    dice.fork("scouts" + stays.size()),
                    arrival,
                    swarm.massKg(),
                    Math.max(t + 600, world.startSecond()));
            empty.add(new double[] {t, scouts.start()});
            t = stay(swarm, scouts);
        }
    }

    /** Flights mostly 10 to 16 h, warm, calm, dry (P); arrival hour 9 to 18 (P). */
    private double settle(double earliest) {
        double midnight = earliest - world.solarHour(earliest) * HOUR;
        for (int day = 0; day < 60; day++) {
            for (int trial = 0; trial < 4; trial++) {
                double hour = Math.max(9, Math.min(18, dice.gauss(13.1, 1.8)));
                double t = midnight + day * DAY + hour * HOUR;
                boolean fine = weather.flight(t) > 0.35 && weather.celsius(t) > 14.5 && weather.rain(t + 1800) == 0;
                if (t >= earliest && fine) {
                    return t;
                }
            }
        }
        return Double.MAX_VALUE;
    }

    private double stay(Swarm swarm, Campaign scouts) {
        double taken = dice.chance(COLLECTED) ? collectionAfter(swarm.end()) : Double.NaN;
        double leaves = dice.chance(LEAVES) ? settle(swarm.end() + dice.uniform(4 * HOUR, 3 * DAY)) : Double.MAX_VALUE;
        boolean shortNotice = scouts.flightHours() < 1;
        Dice own = dice.fork("colony" + stays.size());
        if (leaves < Math.min(Double.isNaN(taken) ? Double.MAX_VALUE : taken, world.endSecond() - HOUR)) {
            Colony colony = new Colony(world, weather, own, swarm, leaves);
            Absconding absconding = Absconding.of(own, colony, leaves);
            stays.add(new Stay(scouts, colony, shortNotice, Double.NaN, absconding));
            return absconding.end() + dice.uniform(2 * HOUR, DAY);
        }
        double end = Double.isNaN(taken) ? world.endSecond() : Math.min(taken, world.endSecond());
        Colony colony = new Colony(world, weather, own, swarm, end);
        if (end >= world.endSecond()) {
            stays.add(new Stay(scouts, colony, shortNotice, Double.NaN, null));
            return world.endSecond();
        }
        stays.add(new Stay(scouts, colony, shortNotice, taken, null));
        return collect(taken);
    }

    private double collectionAfter(double moved) {
        // The evening of the day itself to the third after it; a few before dawn (P).
        double evening = weather.sunset(moved) + dice.uniform(15, 75) * 60 + dice.whole(0, 3) * DAY;
        return dice.chance(0.12) ? evening + 6.5 * HOUR : evening;
    }

    /** The keeper takes the full box. Returns when an empty one hangs again. */
    private double collect(double taken) {
        double end = taken + dice.lognormal(900, 0.4, 360, 2700);
        double other = dice.gauss(0, 0.35);
        boolean recorded = dice.chance(0.7);
        double fate = dice.uniform(0, 1);
        if (fate < 0.72) {
            handlings.add(new TrapTruth.Handling(taken, end, "collection", "rehung", other, recorded));
            return end;
        }
        if (fate < 0.86) {
            double back = settle(end + dice.uniform(0.5, 6) * DAY);
            handlings.add(new TrapTruth.Handling(taken, end, "collection", "bare", 0, recorded));
            bare.add(new TrapTruth.BareHook(end, Math.min(back, world.endSecond())));
            if (back < world.endSecond()) {
                double hung = back + dice.uniform(240, 900);
                handlings.add(new TrapTruth.Handling(back, hung, "rehang", "", other, recorded));
                return hung;
            }
            return world.endSecond();
        }
        handlings.add(new TrapTruth.Handling(taken, end, "collection", "taken", 0, recorded));
        gone = end;
        return world.endSecond();
    }

    private void lose(Dice luck) {
        for (double[] spell : empty) {
            double months = (spell[1] - spell[0]) / (30 * DAY);
            int count = luck.poisson(months * world.losingScoutingsPerTrapMonth() * site.attraction());
            for (int i = 0; i < count; i++) {
                double start = fine(luck.uniform(spell[0], spell[1]), spell[1]);
                if (start < spell[1] - HOUR) {
                    losing.add(Campaign.losing(weather, luck.fork("losing" + losing.size()), start, spell[1]));
                }
            }
        }
    }

    /** Scouts of a swarm that took another trap were here too (R27, R28), and fall silent when it moves in. */
    void scoutedBesides(double arrival) {
        double from = arrival - dice.uniform(3 * HOUR, 60 * HOUR);
        for (double[] spell : empty) {
            double until = arrival + dice.uniform(0, 3600);
            if (from >= spell[0] && until <= spell[1]) {
                double start = fine(from, until);
                if (start < until - HOUR) {
                    losing.add(Campaign.losing(weather, dice.fork("besides" + losing.size()), start, until));
                }
            }
        }
    }

    private double fine(double from, double until) {
        double t = from;
        while (t < until && (weather.flight(t) < 0.3 || weather.celsius(t) < 14)) {
            t += 900;
        }
        return t;
    }

    private void rob(Dice luck, Level level) {
        // Dearth, late season, comb scraps (P); the rate is invented.
        double aDay = site.oldComb() ? 0.016 * level.nuisances() : 0.002 * level.nuisances();
        for (double[] spell : empty) {
            int count = luck.poisson((spell[1] - spell[0]) / DAY * aDay);
            for (int i = 0; i < count; i++) {
                double t = luck.uniform(spell[0], spell[1]);
                while (t < spell[1] && weather.flight(t) < 0.12) {
                    t += 600;
                }
                if (t < spell[1] - 2 * HOUR) {
                    robbers.add(new Robbers(world, weather, luck.fork("robbers" + robbers.size()), t, spell[1]));
                }
            }
        }
    }

    /** When the node was taken away with the box, or the season's end. */
    double gone() {
        return gone;
    }
}
