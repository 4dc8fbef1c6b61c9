package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.duskline.analyzer.evening.AtTheTrap;
import org.duskline.analyzer.evening.EveningSheet;
import org.duskline.analyzer.evening.FlightEnd;
import org.duskline.analyzer.evening.PastEvening;
import org.duskline.analyzer.evening.TrapTonight;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.series.CleanSamples;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/** Gathers what the evening sheet and the page for standing at a trap are made from. */
final class StoredEvening {
    /** A sheet is about the evening behind one until the morning's work is over. */
    private static final Duration MORNING = Duration.ofHours(8);

    private static final Duration BEFORE_ONSET = Duration.ofHours(1);
    private static final Duration AT_THE_TRAP = Duration.ofHours(3);
    private static final int PAST_EVENINGS = 7;
    private final Store store;
    private final StoredCurve curves;
    private final StoredNights nights;
    private final VisitLog visits;
    private final AnswerLog answers;
    private final Habits habits;
    private final StoredUpkeep upkeep;

    StoredEvening(
            Store store, StoredCurve curves, StoredNights nights, VisitLog visits, AnswerLog answers, Habits habits) {
        this.store = store;
        this.curves = curves;
        this.nights = nights;
        this.visits = visits;
        this.answers = answers;
        this.habits = habits;
        this.upkeep = new StoredUpkeep(store, habits);
    }

    Tonight tonight(Instant now, BrokerLink link, List<TrapNow> traps, List<Finding> standing) {
        ZoneId zone = traps.stream().findFirst().map(trap -> trap.trap().zone()).orElse(ZoneOffset.UTC);
        LocalDate evening = now.atZone(zone).minus(MORNING).toLocalDate();
        Map<String, List<Visit>> visited =
                visits.all().stream().map(KeptVisit::visit).collect(Collectors.groupingBy(Visit::trap));
        List<TrapTonight> candidates = traps.stream()
                .map(trap -> candidate(trap, evening, standing, visited))
                .toList();
        EveningSheet sheet = EveningSheet.of(evening, zone, now, candidates, habits.round());
        Optional<Night> night = traps.stream().findFirst().flatMap(first -> nights.after(first.trap(), evening));
        return new Tonight(now, link, sheet, night, upkeep.looks(now, traps, standing, visited), traps.size());
    }

    private TrapTonight candidate(
            TrapNow now, LocalDate evening, List<Finding> standing, Map<String, List<Visit>> visited) {
        Trap trap = now.trap();
        Optional<Finding> moveIn = standing.stream()
                .filter(finding -> finding.trap().equals(trap.name()) && finding.kind() == Kind.MOVE_IN)
                .filter(finding -> !denied(finding))
                .max(Comparator.comparing(Finding::onset));
        return new TrapTonight(
                trap,
                now.fitted(),
                !Double.isNaN(now.boxCelsius()),
                moveIn,
                moveIn.map(this::emptyBoxKg).orElse(Double.NaN),
                visited.getOrDefault(trap.name(), List.of()),
                moveIn.map(finding -> pastEvenings(trap, finding, evening)).orElse(List.of()));
    }

    private boolean denied(Finding finding) {
        return answers.verdict(finding.trap(), finding.kind(), finding.onset())
                .filter(answer -> answer.said().deniesASwarm())
                .isPresent();
    }

    List<KeptVisit> visitsAt(String trap) {
        return visits.of(trap);
    }

    /** What is to be done at a trap before long, each in one sentence. */
    List<String> due(Instant now, TrapNow trap, List<Finding> standing, List<KeptVisit> there) {
        return upkeep.due(
                now, trap, standing, there.stream().map(KeptVisit::visit).toList());
    }

    Answers answers(List<Finding> findings) {
        Optional<Instant> first = findings.stream().map(Finding::onset).min(Comparator.naturalOrder());
        Optional<Instant> last = findings.stream().map(Finding::onset).max(Comparator.naturalOrder());
        return first.map(from ->
                        new Answers(answers.between(from, last.orElseThrow().plusMillis(1))))
                .orElse(Answers.NONE);
    }

    /** What somebody sees who stands at the trap now. */
    Doorstep doorstep(Instant now, BrokerLink link, TrapNow trap, List<Finding> standing) {
        LocalDate evening = now.atZone(trap.trap().zone()).minus(MORNING).toLocalDate();
        List<Visit> there = visitsAt(trap.name()).stream().map(KeptVisit::visit).toList();
        TrapTonight tonight = candidate(trap, evening, standing, Map.of(trap.name(), there));
        FlightEnd flightEnd = FlightEnd.tonight(
                trap.trap().latitude(),
                trap.trap().longitude(),
                evening,
                trap.trap().zone(),
                tonight.evenings());
        return new Doorstep(
                now,
                link,
                trap,
                AtTheTrap.now(lately(trap, now), now, flightEnd),
                flightEnd,
                tonight.moveIn().filter(finding -> tonight.occupied()),
                tonight.closed());
    }

    /** Cleaned, since a count that dips to nothing and comes back is no bee. */
    private List<Sample> lately(TrapNow trap, Instant now) {
        return store.line().fittingsIn(trap.name()).stream()
                .filter(fitting -> fitting.covers(now))
                .findFirst()
                .map(fitting -> curves.series(fitting, now.minus(AT_THE_TRAP), now.plusMillis(1)))
                .map(series -> CleanSamples.of(series, 0, Long.MAX_VALUE))
                .orElse(List.of());
    }

    /** What the scale read before the swarm came: the box with its fittings. */
    private double emptyBoxKg(Finding moveIn) {
        return fitting(moveIn)
                .map(fitting -> curves.series(fitting, moveIn.onset().minus(BEFORE_ONSET), moveIn.onset()))
                .map(StoredEvening::medianWeight)
                .orElse(Double.NaN);
    }

    private static double medianWeight(TrapSeries series) {
        return series.median(Quantity.WEIGHT, 0, series.size() - 1);
    }

    private Optional<Fitting> fitting(Finding finding) {
        return store.line().fittingOf(finding.node(), finding.onset());
    }

    private List<PastEvening> pastEvenings(Trap trap, Finding moveIn, LocalDate evening) {
        LocalDate came = moveIn.onset().atZone(trap.zone()).toLocalDate();
        LocalDate first = came.isBefore(evening.minusDays(PAST_EVENINGS)) ? evening.minusDays(PAST_EVENINGS) : came;
        if (!first.isBefore(evening)) {
            return List.of();
        }
        List<Sample> samples = new ArrayList<>();
        store.samples()
                .read(
                        moveIn.node(),
                        first.atStartOfDay(trap.zone()).toInstant(),
                        evening.atStartOfDay(trap.zone()).plusHours(12).toInstant(),
                        samples::add);
        return first.datesUntil(evening)
                .map(date -> PastEvening.read(date, trap.latitude(), trap.longitude(), trap.zone(), samples))
                .toList();
    }
}
