package org.duskline.web.page;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.duskline.analyzer.curve.Curve;
import org.duskline.analyzer.curve.CurveTable;
import org.duskline.analyzer.curve.CurveThinner;
import org.duskline.analyzer.evening.Doubtful;
import org.duskline.analyzer.evening.Stop;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.collector.trap.Trap;
import org.duskline.web.page.board.Answers;
import org.duskline.web.page.board.LineOverview;
import org.duskline.web.page.board.Night;
import org.duskline.web.page.board.Tonight;
import org.duskline.web.page.board.TrapDetail;
import org.duskline.web.page.board.TrapNow;
import org.duskline.web.page.board.Watchboard;

/** Puts together what each page shows, from the board. */
final class PageViews {
    private static final Duration STRIP = Duration.ofHours(24);
    private static final Duration STRIP_BEFORE_ONSET = Duration.ofHours(6);
    private static final int STRIP_COLUMNS = 320;
    private static final Duration TOLD_LATELY = Duration.ofDays(30);
    private static final int MOST_ALERTS = 200;
    private static final int MOST_READ = 1000;

    /** Kept for the story of a trap; nobody has to act on them. */
    private static final Set<Kind> EXPLAINED_ITSELF = Set.of(Kind.SOAKED, Kind.TARE_SHIFT, Kind.DISTURBED, Kind.LODGER);

    private final Watchboard board;

    PageViews(Watchboard board) {
        this.board = board;
    }

    TonightView tonight() {
        Tonight tonight = board.tonight();
        List<TonightView.Entry> entries = tonight.sheet().round().stops().stream()
                .map(stop -> new TonightView.Entry(stop, stripAround(stop, tonight.now())))
                .toList();
        boolean atHome = entries.isEmpty() && tonight.traps() > 0;
        return new TonightView(
                tonight,
                tonight.night().map(night -> Ribbon.of(tonight, night)),
                entries,
                atHome ? Optional.of(line()) : Optional.empty(),
                board.answers(shownOn(tonight)));
    }

    private static List<Finding> shownOn(Tonight tonight) {
        Stream<Finding> round = tonight.sheet().round().stops().stream().map(Stop::moveIn);
        Stream<Finding> doubtful = tonight.sheet().doubtful().stream().map(Doubtful::moveIn);
        Stream<Finding> looks = tonight.looks().stream().flatMap(look -> look.finding().stream());
        return Stream.of(round, doubtful, looks).flatMap(each -> each).toList();
    }

    LineView line() {
        LineOverview line = board.line();
        List<LineView.Row> rows = line.traps().stream()
                .map(trap -> new LineView.Row(trap, lastDay(trap, line.now())))
                .toList();
        return new LineView(line, rows, ticks(line));
    }

    /** @param beside what the curve is set beside, as an address has it; null for nothing */
    TrapView trap(ViewSpan span, TrapDetail detail, String beside) {
        Trap trap = detail.trap().trap();
        List<Beside> offered = Beside.offered(
                trap, board.line().traps().stream().map(TrapNow::trap).toList());
        Beside chosen = Beside.read(beside, offered);
        return new TrapView(
                detail,
                span,
                words(trap.name(), span.from(), span.until(), trap.zone()),
                chosen,
                offered,
                chosen.curves().stream()
                        .map(other -> other.said() + ": "
                                + words(
                                                other.trap(),
                                                span.from().minus(other.back()),
                                                span.until().minus(other.back()),
                                                trap.zone())
                                        .sentences())
                        .toList(),
                board.answers(detail.findings()));
    }

    private CurveText words(String trap, Instant from, Instant until, ZoneId zone) {
        CurveTable table = new CurveTable(from, until, zone);
        board.curve(trap, from, until, table);
        return CurveText.of(table, zone);
    }

    AlertsView alerts(Instant now, boolean everything) {
        List<Finding> findings = board.findings(now.minus(TOLD_LATELY), MOST_READ).stream()
                .filter(finding -> everything || !EXPLAINED_ITSELF.contains(finding.kind()))
                .limit(MOST_ALERTS)
                .toList();
        LineOverview line = board.line();
        Answers answers = board.answers(findings);
        List<AlertsView.Day> days = new ArrayList<>();
        for (Finding finding : findings) {
            var zone = line.traps().stream()
                    .map(TrapNow::trap)
                    .filter(trap -> trap.name().equals(finding.trap()))
                    .map(Trap::zone)
                    .findFirst()
                    .orElse(ZoneOffset.UTC);
            LocalDate date = finding.raised().atZone(zone).toLocalDate();
            if (days.isEmpty() || !days.get(days.size() - 1).date().equals(date)) {
                days.add(new AlertsView.Day(date, new ArrayList<>()));
            }
            days.get(days.size() - 1).told().add(new AlertsView.Told(finding, zone, answers.to(finding)));
        }
        return new AlertsView(line, days, everything);
    }

    Curve curve(String trap, Instant from, Instant until, int columns) {
        CurveThinner thinner = new CurveThinner(from, until, columns);
        board.curve(trap, from, until, thinner);
        return thinner.curve();
    }

    private Strip lastDay(TrapNow trap, Instant now) {
        return strip(trap.trap(), now.minus(STRIP), now, trap.standing());
    }

    private Strip stripAround(Stop stop, Instant now) {
        Instant onset = stop.moveIn().onset();
        Instant until = onset.plus(STRIP).isBefore(now) ? onset.plus(STRIP) : now;
        return strip(stop.trap(), onset.minus(STRIP_BEFORE_ONSET), until, Optional.of(stop.moveIn()));
    }

    /** The curve around a finding, as far as it has come. */
    Strip stripAround(Finding finding, Instant now) {
        Trap trap = board.trap(finding.trap())
                .map(detail -> detail.trap().trap())
                .orElseThrow(() -> new NotHere("The line has no trap named \"" + finding.trap() + "\"."));
        Instant until =
                finding.onset().plus(STRIP).isBefore(now) ? finding.onset().plus(STRIP) : now;
        return strip(trap, finding.onset().minus(STRIP_BEFORE_ONSET), until, Optional.of(finding));
    }

    /** The curve of a stretch. */
    Strip strip(Trap trap, Instant from, Instant until) {
        return strip(trap, from, until, Optional.empty());
    }

    private Strip strip(Trap trap, Instant from, Instant until, Optional<Finding> finding) {
        List<Night> nights = board.nights(trap, from, until);
        return Strip.draw(curve(trap.name(), from, until, STRIP_COLUMNS), nights, finding, trap.zone());
    }

    private static List<Tick> ticks(LineOverview line) {
        return line.traps().stream()
                .findFirst()
                .map(first -> new TimeScale(line.now().minus(STRIP), line.now())
                        .ticks(3, first.trap().zone()))
                .orElse(List.of());
    }
}
