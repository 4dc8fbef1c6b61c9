package org.duskline.web.page;

import static org.duskline.collector.trap.Fitted.BOTH;
import static org.duskline.collector.trap.Fitted.COUNTER;
import static org.duskline.collector.trap.Fitted.SCALE;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.analyzer.evening.AtTheTrap;
import org.duskline.analyzer.evening.EveningSheet;
import org.duskline.analyzer.evening.FlightEnd;
import org.duskline.analyzer.evening.Place;
import org.duskline.analyzer.evening.RoundSettings;
import org.duskline.analyzer.evening.TrapTonight;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Stage;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.collector.trap.Fitted;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.InventedCurves.Story;
import org.duskline.web.page.board.Answers;
import org.duskline.web.page.board.BoardUnavailable;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.Doorstep;
import org.duskline.web.page.board.LineOverview;
import org.duskline.web.page.board.Look;
import org.duskline.web.page.board.LooseNode;
import org.duskline.web.page.board.Night;
import org.duskline.web.page.board.Tonight;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.TrapNow;
import org.duskline.web.page.board.Watchboard;

/** A line in a valley that does not exist, on one evening in May, in several moods. All of it is invented. */
final class InventedLine implements Watchboard {
    static final ZoneId ZONE = ZoneId.of("Europe/Vienna");
    static final Instant NOW = Instant.parse("2026-05-12T17:12:00Z");
    static final Instant ARRIVAL = Instant.parse("2026-05-12T11:04:00Z");
    static final Instant SEASON = Instant.parse("2026-04-02T06:00:00Z");

    private static final String OLD_BAIT = "Bait is 17 days old; you renew it every 14 days.";

    static final int MANY = 14;

    private static final List<String> FIELDS = List.of(
            "Bramble Wharf", "Cold Spring", "Dovecote", "Elder Cut", "Fallow Cross", "Glebe Barn", "Heron Ford");

    /** How things stand. */
    enum Mood {
        BUSY,
        /** A night on which more traps have filled than one can remember. */
        OVERWHELMED,
        NO_TRAP,
        NO_DATA,
        BROKER_DOWN,
        DATABASE_BROKEN
    }

    private record Box(String name, Fitted fitted, Condition condition, Story story) {}

    private static final List<Box> BOXES = List.of(
            new Box("Alder Sluice", BOTH, Condition.FILLING, Story.SWARM),
            new Box("Chapel Nook", BOTH, Condition.ROBBED, Story.ROBBED),
            new Box("Gorse Landing", COUNTER, Condition.QUIET, Story.QUIET),
            new Box("Hollow Gate", BOTH, Condition.UNHEARD, Story.SILENT_SINCE_MORNING),
            new Box("Long Pit", BOTH, Condition.UNHEARD, Story.NEVER_HEARD),
            new Box("Old Kiln", BOTH, Condition.SCOUTED, Story.SCOUTED),
            new Box("Tern Bank", BOTH, Condition.QUIET, Story.QUIET),
            new Box("Three Stiles", SCALE, Condition.QUIET, Story.QUIET),
            new Box("Tithe Loft", COUNTER, Condition.OCCUPIED, Story.SWARM),
            new Box("Weir House", BOTH, Condition.QUIET, Story.QUIET));

    private final Mood mood;
    private final Optional<AnswerLog> answers;
    private final InventedCurves curves = new InventedCurves(NOW);
    private final List<Finding> later = new CopyOnWriteArrayList<>();

    InventedLine(Mood mood) {
        this(mood, Optional.empty());
    }

    /** A line whose findings were answered. */
    InventedLine(Mood mood, Optional<AnswerLog> answers) {
        this.mood = mood;
        this.answers = answers;
    }

    /** Something more is found while somebody looks. */
    void find(Finding finding) {
        later.add(finding);
    }

    @Override
    public LineOverview line() {
        fail();
        List<LooseNode> loose = mood == Mood.BUSY
                ? List.of(new LooseNode("n31", NOW.minus(Duration.ofHours(15)), NOW.minus(Duration.ofMinutes(3))))
                : List.of();
        return new LineOverview(NOW, link(), boxes().stream().map(this::now).toList(), loose);
    }

    @Override
    public Tonight tonight() {
        fail();
        boolean something = mood == Mood.BUSY || mood == Mood.BROKER_DOWN;
        List<TrapTonight> traps = mood == Mood.OVERWHELMED
                ? manySwarms()
                : something
                        ? List.of(
                                tonight("Alder Sluice", InventedFindings.swarm()),
                                tonight("Tithe Loft", InventedFindings.likelySwarm()))
                        : List.of();
        LocalDate evening = LocalDate.of(2026, 5, 12);
        return new Tonight(
                NOW,
                link(),
                EveningSheet.of(evening, ZONE, NOW, traps, RoundSettings.USUAL.from(new Place(46.93, 15.02))),
                boxes().isEmpty() ? Optional.empty() : Optional.of(night(evening)),
                something ? looks() : List.of(),
                boxes().size());
    }

    private TrapTonight tonight(String name, Finding moveIn) {
        Box box = boxes().stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow();
        return new TrapTonight(
                place(box),
                box.fitted(),
                true,
                Optional.of(moveIn),
                box.fitted().hasScale() ? 9.42 : Double.NaN,
                List.of(),
                List.of());
    }

    private static List<TrapTonight> manySwarms() {
        return IntStream.range(0, MANY)
                .mapToObj(number -> {
                    String name = FIELDS.get(number / 2) + (number % 2 == 0 ? " Upper" : " Lower");
                    Trap trap = new Trap(name, 46.9 + 0.011 * (number % 4), 15.1 + 0.014 * (number / 4), ZONE);
                    return new TrapTonight(
                            trap,
                            BOTH,
                            true,
                            Optional.of(InventedFindings.swarmAt(name)),
                            9.2 + 0.1 * number,
                            List.of(),
                            List.of());
                })
                .toList();
    }

    private static Trap place(Box box) {
        double north = BOXES.indexOf(box) * 0.013;
        return new Trap(box.name(), 46.9 + north, 15.1 - north * (BOXES.indexOf(box) % 3 - 1), ZONE);
    }

    @Override
    public Optional<TrapDetail> trap(String name) {
        fail();
        return boxes().stream()
                .filter(box -> box.name().equals(name))
                .findFirst()
                .map(box -> {
                    boolean heard = story(box) != Story.NEVER_HEARD;
                    return new TrapDetail(
                            NOW,
                            link(),
                            now(box),
                            heard ? Optional.of(SEASON) : Optional.empty(),
                            findings(Instant.EPOCH, 100).stream()
                                    .filter(finding -> finding.trap().equals(name))
                                    .toList(),
                            heard ? List.of(InventedFindings.baited(name)) : List.of(),
                            name.equals("Weir House") ? List.of(OLD_BAIT) : List.of());
                });
    }

    @Override
    public Optional<Doorstep> doorstep(String name) {
        return trap(name).map(detail -> {
            FlightEnd flightEnd = FlightEnd.tonight(
                    detail.trap().trap().latitude(),
                    detail.trap().trap().longitude(),
                    LocalDate.of(2026, 5, 12),
                    ZONE,
                    List.of());
            return new Doorstep(
                    NOW, link(), detail.trap(), entrance(name), flightEnd, Optional.empty(), Optional.empty());
        });
    }

    /** Each trap says something else. */
    private static AtTheTrap entrance(String trap) {
        return switch (trap) {
            case "Alder Sluice" -> new AtTheTrap.Quiet(Duration.ofMinutes(12), true);
            case "Three Stiles" -> new AtTheTrap.ByTheLight(false, "civil dusk");
            case "Hollow Gate" -> new AtTheTrap.Unheard(Duration.ofHours(9), true);
            default -> new AtTheTrap.StillFlying(6);
        };
    }

    @Override
    public void curve(String trap, Instant from, Instant until, Consumer<CurvePoint> points) {
        fail();
        boxes().stream()
                .filter(box -> box.name().equals(trap))
                .forEach(box -> curves.points(trap, story(box), box.fitted(), from, until, points));
    }

    @Override
    public List<Night> nights(Trap trap, Instant from, Instant until) {
        fail();
        LocalDate first = from.atZone(ZONE).toLocalDate().minusDays(1);
        return first.datesUntil(until.atZone(ZONE).toLocalDate().plusDays(1))
                .map(InventedLine::night)
                .filter(night -> night.dawn().isAfter(from) && night.dusk().isBefore(until))
                .toList();
    }

    @Override
    public List<Finding> findings(Instant since, int limit) {
        fail();
        if (mood == Mood.NO_TRAP || mood == Mood.NO_DATA) {
            return List.of();
        }
        List<Finding> all = new ArrayList<>(later);
        all.addAll(InventedFindings.all());
        return all.stream()
                .filter(finding -> !finding.raised().isBefore(since))
                .sorted(Comparator.comparing(Finding::raised).reversed())
                .limit(limit)
                .toList();
    }

    @Override
    public Answers answers(List<Finding> findings) {
        fail();
        return answers.map(log -> new Answers(log.between(Instant.EPOCH, NOW.plus(Duration.ofDays(1)))))
                .orElse(Answers.NONE);
    }

    private void fail() {
        if (mood == Mood.DATABASE_BROKEN) {
            throw new BoardUnavailable(
                    "The database file duskline.db could not be read: the disk reports an error at page 4711.",
                    new IOException("disk I/O error"));
        }
    }

    private List<Box> boxes() {
        return mood == Mood.NO_TRAP ? List.of() : BOXES;
    }

    private Story story(Box box) {
        return mood == Mood.NO_DATA ? Story.NEVER_HEARD : box.story();
    }

    private BrokerLink link() {
        boolean up = mood != Mood.BROKER_DOWN;
        return new BrokerLink(up, NOW.minus(Duration.ofMinutes(up ? 400 : 26)), "mqtt://localhost:1883");
    }

    private static Night night(LocalDate evening) {
        return new Night(
                evening.atTime(21, 0).atZone(ZONE).toInstant(),
                evening.plusDays(1).atTime(4, 51).atZone(ZONE).toInstant());
    }

    private TrapNow now(Box box) {
        CurvePoint[] last = {null};
        curves.points(
                box.name(), story(box), box.fitted(), NOW.minus(Duration.ofHours(12)), NOW, point -> last[0] = point);
        Optional<Instant> measured =
                Optional.ofNullable(last[0]).map(point -> Instant.ofEpochMilli(point.timeMillis()));
        boolean heard = measured.isPresent();
        return new TrapNow(
                place(box),
                box.fitted(),
                Optional.of("n" + (10 + BOXES.indexOf(box))),
                heard ? box.condition() : Condition.UNHEARD,
                measured.map(time -> time.plusSeconds(4)),
                measured,
                heard ? last[0].weightKg() : Double.NaN,
                heard ? last[0].inPerMinute() : Double.NaN,
                heard ? last[0].outPerMinute() : Double.NaN,
                heard ? last[0].boxCelsius() : Double.NaN,
                heard ? last[0].cellCelsius() : Double.NaN,
                heard ? 3.92 : Double.NaN,
                findings(Instant.EPOCH, 100).stream()
                        .filter(finding -> finding.trap().equals(box.name()) && finding.standing())
                        .findFirst());
    }

    private static List<Look> looks() {
        return List.of(
                look(InventedFindings.scouts("Old Kiln", "2026-05-12T07:10:00Z", Stage.RAISED)),
                look(InventedFindings.silence()),
                new Look("Weir House", Optional.empty(), OLD_BAIT));
    }

    private static Look look(Finding finding) {
        return new Look(finding.trap(), Optional.of(finding), finding.summary());
    }
}
