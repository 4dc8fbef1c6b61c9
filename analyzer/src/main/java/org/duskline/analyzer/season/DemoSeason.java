package org.duskline.analyzer.season;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;

/**
 * The demo line: ten traps in the valley of Ombrel on an island that is on no map, five weeks that have passed, and a
 * live day on which something happens every few minutes at {@link #SPEED} times life. All of it is invented.
 */
public final class DemoSeason {
    /** Demo seconds to a second of watching: two minutes show eight hours. */
    public static final int SPEED = 240;
    /** Days that have passed when somebody begins to watch. */
    public static final int PAST_DAYS = 35;

    private static final int LIVE_DAYS = 8;
    private static final long SEED = 20_260_418;
    private static final ZoneId ZONE = ZoneId.of("Atlantic/Azores");
    private static final LocalDate FIRST = LocalDate.of(2026, 4, 18);
    private static final LocalTime WATCHED_FROM = LocalTime.NOON;
    /** Renewed every fortnight, or set once: the trial's two arms. */
    private static final String RENEWED = "lemongrass, renewed each fortnight";

    private static final String ONCE = "lemongrass, set once";

    /**
     * How a trap was set, and its arm in the trial.
     *
     * @param trap its name
     * @param pair traps of the same number hang near each other
     * @param lure the trial's factor
     * @param heightMetres of the entrance
     * @param litres of the box
     */
    public record Setup(String trap, int pair, String lure, double heightMetres, int litres) {}

    /**
     * Something to be seen.
     *
     * @param at demo time
     * @param trap where; empty for the whole line
     * @param what in the keeper's words
     */
    public record Scene(Instant at, String trap, String what) {}

    private record Spot(
            String trap, double north, double east, Fitted fitted, int period, int pack, boolean comb, double metres) {}

    private static final List<Spot> SPOTS = List.of(
            new Spot("Ropewalk", 0.004, -0.010, Fitted.BOTH, 60, 1, true, 2.5),
            new Spot("Signal Barn", 0.006, -0.006, Fitted.BOTH, 180, 1, false, 3),
            new Spot("Lower Terraces", -0.012, 0.004, Fitted.BOTH, 120, 1, true, 2),
            new Spot("Upper Terraces", -0.010, 0.009, Fitted.COUNTER, 180, 1, false, 2.5),
            new Spot("Saltpan Gate", 0.021, -0.024, Fitted.SCALE, 120, 1, false, 2),
            new Spot("Tern Cliff", 0.024, -0.019, Fitted.SCALE, 300, 1, true, 3.5),
            new Spot("Wren Chapel", -0.003, 0.027, Fitted.BOTH, 300, 2, false, 2),
            new Spot("Cistern Yard", 0.001, 0.031, Fitted.BOTH, 120, 2, true, 2.5),
            new Spot("Lime Kiln", -0.027, -0.015, Fitted.BOTH, 300, 3, false, 3),
            new Spot("Heath Pump", -0.024, -0.021, Fitted.COUNTER, 180, 1, true, 2));

    private final World world;
    private final Season season;
    private final double live;

    public DemoSeason() {
        Climate mild = new Climate(13.5, 7.5, 5.5, 0.16, 0.16, 1.6, -0.6, 5);
        this.world = new World(45.9, -20.4, ZONE, FIRST, PAST_DAYS + LIVE_DAYS, mild, 0.3, 0.35, 6);
        this.live = watchedFrom().getEpochSecond();
        Dice dice = new Dice(SEED);
        List<Site> sites = new ArrayList<>();
        List<Habit> habits = new ArrayList<>();
        List<Script> scripts = new ArrayList<>();
        for (int i = 0; i < SPOTS.size(); i++) {
            Spot spot = SPOTS.get(i);
            Trap trap = new Trap(
                    spot.trap(), world.latitude() + spot.north(), world.longitude() + spot.east(), world.zone());
            sites.add(Site.draw(dice.fork("site" + i), trap, spot.fitted(), Level.CLEAN)
                    .holding(spot.comb()));
            habits.add(Habit.draw(dice.fork("habit" + i), i + 1, spot.fitted()).every(spot.period(), spot.pack()));
            scripts.add(script(spot.trap()));
        }
        Shower rain = new Shower(at(0, 25), at(0, 46), 5);
        Fair fair = new Fair(List.of(rain), live - 3 * 86400, live + 2 * 86400);
        this.season = new Season(SEED, world, sites, habits, fair, scripts);
    }

    private static double before(int days, int hour, int minute) {
        return FIRST.plusDays(PAST_DAYS - days)
                .atTime(hour, minute)
                .atZone(ZONE)
                .toEpochSecond();
    }

    private double at(int hours, int minutes) {
        return live + hours * 3600.0 + minutes * 60.0;
    }

    private Script script(String trap) {
        return switch (trap) {
            case "Ropewalk" -> swarm(new Script.Arrival(at(1, 40), 1.62, 13, false, true));
            case "Lower Terraces" ->
                new Script(
                        List.of(new Script.Arrival(before(27, 13, 30), 1.15, 17, true, false)),
                        List.of(),
                        List.of(),
                        List.of(new TrapTruth.Handling(at(1, 5), at(1, 15), "visit", "", 0.02, true)),
                        List.of());
            case "Lime Kiln" -> swarm(new Script.Arrival(before(19, 12, 40), 2.2, 22, true, false));
            case "Tern Cliff" -> swarm(new Script.Arrival(before(12, 14, 10), 1.3, 15, true, false));
            case "Heath Pump" -> swarm(new Script.Arrival(before(7, 13, 0), 1.4, 12, true, false));
            case "Signal Barn" ->
                new Script(
                        List.of(),
                        List.of(
                                new Script.Scouted(before(9, 12, 0), before(8, 17, 0)),
                                new Script.Scouted(at(2, 10), at(30, 0))),
                        List.of(),
                        List.of(),
                        List.of());
            case "Cistern Yard" -> new Script(List.of(), List.of(), List.of(at(0, 8)), List.of(), List.of());
            case "Saltpan Gate" ->
                new Script(
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(new Script.Sprinkler(sprinkled(), 14, 0.46)));
            default -> Script.nothing();
        };
    }

    private static Script swarm(Script.Arrival arrival) {
        return new Script(List.of(arrival), List.of(), List.of(), List.of(), List.of());
    }

    /** When a garden hose wets the box at Saltpan Gate: the false alarm that tuning is shown with. */
    private static double sprinkled() {
        return before(2, 12, 50);
    }

    /** What passes for a swarm at Saltpan Gate and was none: when it began. */
    public Instant falseAlarm() {
        return Instant.ofEpochSecond((long) sprinkled());
    }

    /** When somebody begins to watch; messages received before it have passed. */
    public static Instant watchedFrom() {
        return FIRST.plusDays(PAST_DAYS).atTime(WATCHED_FROM).atZone(ZONE).toInstant();
    }

    /** The demo's time after so much watching. */
    public static Instant after(Duration watching) {
        return watchedFrom().plus(watching.multipliedBy(SPEED));
    }

    public List<Watched> line() {
        return season.line();
    }

    /** How the ten traps were set; the trial is about how often the lure is renewed. */
    public List<Setup> setups() {
        List<Setup> setups = new ArrayList<>();
        for (int i = 0; i < SPOTS.size(); i++) {
            Spot spot = SPOTS.get(i);
            String lure = (i + i / 2) % 2 == 0 ? RENEWED : ONCE;
            setups.add(new Setup(spot.trap(), i / 2 + 1, lure, spot.metres(), 40));
        }
        return setups;
    }

    /** What happens on the live day, in order. */
    public List<Scene> scenes() {
        return List.of(
                scene(0, 0, "Ropewalk", "scouts, more of them than this morning"),
                scene(0, 8, "Cistern Yard", "robbers strip the old comb"),
                scene(0, 25, "", "a shower on the whole line"),
                scene(1, 5, "Lower Terraces", "the keeper looks in"),
                scene(1, 40, "Ropewalk", "a swarm moves in"),
                scene(2, 10, "Signal Barn", "the first scouts of another swarm"));
    }

    private Scene scene(int hours, int minutes, String trap, String what) {
        return new Scene(Instant.ofEpochSecond((long) at(hours, minutes)), trap, what);
    }

    /** All messages in order of receipt, the past first; the same each time. */
    public SeasonStream play() {
        return season.play();
    }

    /** The whole demo as a season, to be written to files or judged. */
    public Season season() {
        return season;
    }
}
