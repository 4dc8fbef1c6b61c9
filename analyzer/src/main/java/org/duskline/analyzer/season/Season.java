package org.duskline.analyzer.season;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;

/**
 * A synthetic season of a whole line: the same seed gives the same messages and the same truth, whoever asks and however
 * often.
 */
public final class Season {
    /** Topic root of the messages. */
    public static final String ROOT = "traps";
    /** Share of arrivals whose scouts were at another trap of the line too; invented. */
    private static final double SHARED = 0.4;

    private final long seed;
    private final Level level;
    private final World world;
    private final List<Site> sites = new ArrayList<>();
    private final List<Habit> habits = new ArrayList<>();
    private final Fair fair;
    private final List<Script> scripts;
    private final boolean hosed;

    /** A season of which places, nodes, weather and events are written as far as they are given. */
    Season(long seed, World world, List<Site> sites, List<Habit> habits, Fair fair, List<Script> scripts) {
        this.seed = seed;
        this.level = Level.CLEAN;
        this.world = world;
        this.sites.addAll(sites);
        this.habits.addAll(habits);
        this.fair = fair;
        this.scripts = List.copyOf(scripts);
        this.hosed = false;
    }

    private Season(long seed, Level level, int days, int traps, boolean hosed) {
        this.seed = seed;
        this.hosed = hosed;
        this.level = level;
        this.fair = Fair.asDrawn();
        this.scripts = List.of();
        Dice dice = new Dice(seed);
        this.world = World.draw(dice.fork("world"), days);
        List<String> names = PlaceNames.draw(dice.fork("names"), traps);
        Dice fittings = dice.fork("fittings");
        for (int i = 0; i < traps; i++) {
            Dice own = dice.fork("site" + i);
            Fitted fitted = fittings.chance(0.5) ? Fitted.BOTH : fittings.chance(0.5) ? Fitted.COUNTER : Fitted.SCALE;
            Trap trap = new Trap(
                    names.get(i),
                    rounded(world.latitude() + own.gauss(0, 0.02)),
                    rounded(world.longitude() + own.gauss(0, 0.03)),
                    world.zone());
            sites.add(Site.draw(own, trap, fitted, level));
            habits.add(Habit.draw(own.fork("habit"), i + 1, fitted));
        }
    }

    /** A season of so many traps over so many days, drawn from a seed. */
    public static Season of(long seed, Level level, int days, int traps) {
        return drawn(seed, level, days, traps, false);
    }

    /** The same, on a line with an odd habit: on many a clear afternoon a garden hose wets each box ({@link Hose}). */
    public static Season amongGardens(long seed, Level level, int days, int traps) {
        return drawn(seed, level, days, traps, true);
    }

    private static Season drawn(long seed, Level level, int days, int traps, boolean hosed) {
        if (days < 1 || traps < 1) {
            throw new IllegalArgumentException(
                    "A season needs at least one day and one trap, not " + days + " days and " + traps + " traps.");
        }
        return new Season(seed, level, days, traps, hosed);
    }

    private static double rounded(double degrees) {
        return Math.round(degrees * 1e5) / 1e5;
    }

    public long seed() {
        return seed;
    }

    public Level level() {
        return level;
    }

    public World world() {
        return world;
    }

    /** The traps with their nodes, known before the first message. */
    public List<Watched> line() {
        List<Watched> line = new ArrayList<>();
        for (int i = 0; i < sites.size(); i++) {
            Site site = sites.get(i);
            Habit habit = habits.get(i);
            Fitting fitting = new Fitting(
                    habit.node(),
                    site.trap().name(),
                    site.fitted(),
                    world.start().minusSeconds(86400),
                    Instant.MAX);
            line.add(new Watched(
                    site.trap(), fitting, habit.periodSeconds(), habit.samplesPerPack(), habit.countsPerKg()));
        }
        return line;
    }

    /** Plays the season from its beginning. */
    public SeasonStream play() {
        Dice dice = new Dice(seed);
        Weather weather = new Weather(world, dice.fork("weather"), level.nuisances(), fair);
        List<Story> stories = new ArrayList<>();
        for (int i = 0; i < sites.size(); i++) {
            Dice own = dice.fork("story" + i);
            stories.add(
                    scripts.isEmpty()
                            ? new Story(world, weather, sites.get(i), own, level)
                            : new Story(world, weather, sites.get(i), own, level, scripts.get(i)));
        }
        if (scripts.isEmpty()) {
            share(stories, dice.fork("shared"));
        }
        List<Post> posts = new ArrayList<>();
        for (int i = 0; i < sites.size(); i++) {
            posts.add(new Post(
                    world,
                    weather,
                    sites.get(i),
                    habits.get(i),
                    stories.get(i),
                    scripts.isEmpty()
                            ? watered(weather, dice.fork("hose" + i))
                            : scripts.get(i).sprinklers(),
                    dice.fork("post" + i),
                    level));
        }
        return new SeasonStream(this, posts);
    }

    private List<Script.Sprinkler> watered(Weather weather, Dice dice) {
        return hosed ? Hose.draw(world, weather, dice) : List.of();
    }

    private static void share(List<Story> stories, Dice dice) {
        for (Story story : stories) {
            for (Story.Stay stay : story.stays) {
                Story other = dice.pick(stories);
                if (other != story && dice.chance(SHARED)) {
                    other.scoutedBesides(stay.colony().start());
                }
            }
        }
    }
}
