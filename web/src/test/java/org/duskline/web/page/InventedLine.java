package org.duskline.web.page;

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
import org.duskline.analyzer.curve.CurvePoint;
import org.duskline.analyzer.evening.FlightEnd;
import org.duskline.analyzer.evening.TrapTonight;
import org.duskline.analyzer.finding.Condition;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.InventedCurves.Story;
import org.duskline.web.page.board.Answers;
import org.duskline.web.page.board.BoardUnavailable;
import org.duskline.web.page.board.BrokerLink;
import org.duskline.web.page.board.Doorstep;
import org.duskline.web.page.board.LineOverview;
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
                ? InventedEvening.manySwarms()
                : something ? InventedEvening.twoSwarms() : List.of();
        return new Tonight(
                NOW,
                link(),
                InventedEvening.sheet(traps),
                boxes().isEmpty() ? Optional.empty() : Optional.of(InventedEvening.night()),
                something ? InventedEvening.looks() : List.of(),
                boxes().size());
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
                            name.equals("Weir House") ? List.of(InventedEvening.OLD_BAIT) : List.of());
                });
    }

    @Override
    public Optional<Doorstep> doorstep(String name) {
        return trap(name).map(detail -> {
            FlightEnd flightEnd = InventedEvening.flightEnd(detail.trap().trap());
            return new Doorstep(
                    NOW,
                    link(),
                    detail.trap(),
                    InventedEvening.entrance(name),
                    flightEnd,
                    Optional.empty(),
                    Optional.empty());
        });
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
                .map(InventedEvening::nightAfter)
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

    private List<InventedBox> boxes() {
        return mood == Mood.NO_TRAP ? List.of() : InventedBox.ALL;
    }

    private Story story(InventedBox box) {
        return mood == Mood.NO_DATA ? Story.NEVER_HEARD : box.story();
    }

    private BrokerLink link() {
        boolean up = mood != Mood.BROKER_DOWN;
        return new BrokerLink(up, NOW.minus(Duration.ofMinutes(up ? 400 : 26)), "mqtt://localhost:1883");
    }

    private TrapNow now(InventedBox box) {
        CurvePoint[] last = {null};
        curves.points(
                box.name(), story(box), box.fitted(), NOW.minus(Duration.ofHours(12)), NOW, point -> last[0] = point);
        Optional<Instant> measured =
                Optional.ofNullable(last[0]).map(point -> Instant.ofEpochMilli(point.timeMillis()));
        boolean heard = measured.isPresent();
        return new TrapNow(
                box.trap(),
                box.fitted(),
                Optional.of(box.node()),
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
}
