package org.duskline.analyzer.season;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.duskline.analyzer.season.TrapTruth.Storm;

/** One trap with everything that acts on it and the node that watches it; gives out its messages and its truth. */
final class Post {

    private final World world;
    private final Weather weather;
    private final Site site;
    private final Habit habit;
    private final Story story;
    private final List<Script.Sprinkler> sprinklers;
    private final Warmth warmth;
    private final Faults faults;
    private final Lodgers lodgers;
    private final Passing passing;
    private final List<TrapTruth.Glare> glares;
    private final Scale scale;
    private final Beams beams;
    private final Link link;
    private final Board board;
    private final Dice dice;
    private final double[] heard;
    private final double[] netBefore;
    private final double[] netShare;
    private final BitSet minutes = new BitSet();

    Post(
            World world,
            Weather weather,
            Site site,
            Habit habit,
            Story story,
            List<Script.Sprinkler> sprinklers,
            Dice dice,
            Level level) {
        this.world = world;
        this.weather = weather;
        this.site = site;
        this.habit = habit;
        this.story = story;
        this.sprinklers = sprinklers;
        this.dice = dice.fork("sensors");
        this.warmth = new Warmth(world, weather, site, dice.fork("warmth"));
        this.faults = new Faults(world, dice.fork("faults"), level, site.fitted(), story.gone());
        this.lodgers = new Lodgers(world, weather, dice.fork("lodgers"), level, story);
        this.passing = new Passing(world, weather, site, dice.fork("passing"), level, story);
        this.glares = Glares.draw(world, weather, dice.fork("glare"), level);
        Hands hands = new Hands(story.handlings, story.bare, dice.fork("hands"));
        this.scale = site.fitted().hasScale() ? scale(dice, level, hands) : null;
        this.beams = site.fitted().hasCounter() ? beams(dice) : null;
        this.link = new Link(world, habit, dice.fork("link"), level);
        this.board = new Board(world, habit, this, link, faults, dice.fork("board"), level, story.gone());
        int count = story.stays.size();
        this.heard = filled(count);
        this.netBefore = filled(count);
        this.netShare = filled(count);
    }

    private static double[] filled(int count) {
        double[] values = new double[count];
        Arrays.fill(values, Double.NaN);
        return values;
    }

    private Scale scale(Dice luck, Level level, Hands hands) {
        List<Load> loads = new ArrayList<>();
        loads.add(new Wood(world, weather, site, luck.fork("wood"), Math.sqrt(level.nuisances())));
        loads.add(lodgers);
        loads.addAll(story.robbers);
        loads.addAll(sprinklers);
        for (Story.Stay stay : story.stays) {
            loads.add(stay.colony());
            if (stay.left()) {
                loads.add(stay.leaving());
            }
        }
        return new Scale(world, weather, site, loads, hands, warmth, faults, luck.fork("scale"));
    }

    private Beams beams(Dice luck) {
        List<Traffic> bees = new ArrayList<>(List.of(passing));
        bees.addAll(story.losing);
        bees.addAll(story.robbers);
        for (Story.Stay stay : story.stays) {
            bees.add(stay.scouts());
            bees.add(stay.colony().swarm());
            bees.add(stay.colony());
            if (stay.left()) {
                bees.add(stay.leaving());
            }
        }
        Active<TrapTruth.Glare> shining = new Active<>(glares);
        Traffic glare = (t, flow) -> shining.forEach(t, g -> Glares.add(g, t, weather, flow));
        Hands fingers = new Hands(story.handlings, story.bare, luck.fork("fingers"));
        Traffic touch = (t, flow) -> {
            fingers.kg(t);
            fingers.add(t, flow);
        };
        return new Beams(bees, List.of(lodgers, glare, touch), faults, luck.fork("beams"));
    }

    /** One sample, counted since the last. */
    Reading read(double last, double t, boolean dips) {
        double in = Double.NaN;
        double out = Double.NaN;
        if (beams != null) {
            beams.count(last, t);
            in = dips ? 0 : beams.in();
            out = dips ? 0 : beams.out();
            noteNet(t);
        }
        double kg = scale == null ? Double.NaN : scale.read(t);
        double nest = 0;
        for (Story.Stay stay : story.stays) {
            nest = Math.max(nest, t > stay.colony().start() ? stay.colony().warmth(t) : 0);
        }
        boolean absurd = faults.firstWithin("absurd_temperature", last, t) != null;
        // 85 degrees is what a common digital thermometer says before its first conversion (common practice).
        double box = absurd ? 85 : sixteenth(warmth.box(t, nest) + dice.gauss(0, 0.05));
        return new Reading(
                t,
                in,
                out,
                kg,
                kg * habit.countsPerKg(),
                scale == null ? Double.NaN : scale.deviation(),
                sixteenth(warmth.thermometer(t) + dice.gauss(0, 0.05)),
                box,
                Math.min(100, weather.humidity(t) + dice.gauss(0, 0.6)));
    }

    private static double sixteenth(double celsius) {
        return Math.round(celsius * 16) / 16.0;
    }

    private void noteNet(double t) {
        for (int i = 0; i < netShare.length; i++) {
            Swarm swarm = story.stays.get(i).colony().swarm();
            double net = beams.in() - beams.out();
            if (t < swarm.start()) {
                netBefore[i] = net;
            } else if (t >= swarm.end() && Double.isNaN(netShare[i])) {
                netShare[i] = (net - netBefore[i]) / swarm.bees();
            }
        }
    }

    void restart() {
        if (beams != null) {
            beams.restart();
            Arrays.fill(netBefore, Double.NaN);
        }
    }

    Parcel next() {
        Parcel parcel = board.next();
        if (parcel != null) {
            for (double sample : parcel.samples()) {
                note(parcel.received(), sample);
            }
        }
        return parcel;
    }

    private void note(double received, double sample) {
        minutes.set((int) Math.max(0, (sample - world.startSecond()) / 60));
        for (int i = 0; i < heard.length; i++) {
            double half = story.stays.get(i).colony().swarm().half();
            if (Double.isNaN(heard[i]) && sample >= half + habit.periodSeconds()) {
                heard[i] = received;
            }
        }
    }

    private double watchedDays() {
        double sum = 0;
        int before = minutes.nextSetBit(0);
        for (int i = before; i >= 0; i = minutes.nextSetBit(i + 1)) {
            sum += i - before <= 60 ? i - before : 0;
            before = i;
        }
        return Math.round(sum / 14.4) / 100.0;
    }

    /** Only whole once the last message has been taken. */
    TrapTruth truth() {
        return new TrapTruth(
                site.trap().name(),
                habit.node(),
                site.fitted().name().toLowerCase(Locale.ROOT),
                habit.periodSeconds(),
                habit.samplesPerPack(),
                site.trap().latitude(),
                site.trap().longitude(),
                site.trap().zone().getId(),
                watchedDays(),
                arrivals(),
                story.stays.stream()
                        .filter(Story.Stay::left)
                        .map(s -> new TrapTruth.Departure(
                                s.leaving().start(),
                                s.leaving().end(),
                                s.leaving().massKg()))
                        .toList(),
                story.losing.stream()
                        .sorted(Comparator.comparingDouble(Campaign::start))
                        .map(c -> new TrapTruth.Scouting(c.start(), c.end(), c.peakScouts(), c.peakPassages()))
                        .toList(),
                story.robbers.stream()
                        .map(r -> new TrapTruth.Robbing(r.start(), r.end(), r.peakPassages(), r.lossKg()))
                        .toList(),
                List.copyOf(story.handlings),
                List.copyOf(story.bare),
                lodgers.truth(),
                passing.neighbours(),
                passing.strays(),
                weather.showers().stream()
                        .map(s -> new TrapTruth.Rain(
                                s.start() + site.rainLate(), s.end() + site.rainLate(), s.millimetres(), false))
                        .toList(),
                storms(),
                glares,
                link.truth(),
                board.reboots(),
                faults.truth());
    }

    private List<TrapTruth.Arrival> arrivals() {
        List<TrapTruth.Arrival> arrivals = new ArrayList<>();
        for (int i = 0; i < story.stays.size(); i++) {
            Story.Stay stay = story.stays.get(i);
            Swarm swarm = stay.colony().swarm();
            arrivals.add(new TrapTruth.Arrival(
                    stay.scouts().start(),
                    swarm.start(),
                    swarm.half(),
                    swarm.end(),
                    swarm.massKg(),
                    stay.scouts().leadHours(swarm.start()),
                    stay.scouts().flightHours(),
                    stay.scouts().peakPassages(),
                    stay.shortNotice(),
                    swarm.style().wireName(),
                    stay.collectedAt(),
                    heard[i],
                    netShare[i]));
        }
        return arrivals;
    }

    private List<Storm> storms() {
        List<Storm> storms = new ArrayList<>();
        double since = Double.NaN;
        for (double t = world.startSecond(); t < world.endSecond(); t += Curve.STEP) {
            boolean shaken = Scale.shakeKg(weather, site, t) > Scale.STORM_KG;
            if (shaken && Double.isNaN(since)) {
                since = t;
            } else if (!shaken && !Double.isNaN(since)) {
                storms.add(new Storm(since, t));
                since = Double.NaN;
            }
        }
        return storms;
    }

    Story story() {
        return story;
    }
}
