package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.duskline.analyzer.evening.EveningSheet;
import org.duskline.analyzer.evening.PastEvening;
import org.duskline.analyzer.evening.RoundSettings;
import org.duskline.analyzer.evening.TrapTonight;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;
import org.duskline.analyzer.upkeep.Upkeep;
import org.duskline.analyzer.upkeep.UpkeepLimits;
import org.duskline.analyzer.visit.AnswerLog;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitLog;
import org.duskline.collector.store.Store;
import org.duskline.collector.trap.Fitting;
import org.duskline.collector.trap.Trap;
import org.duskline.collector.wire.Sample;

/** Gathers what the evening sheet is made from, and what else needs a look. */
final class StoredEvening {
    /** A sheet is about the evening behind one until the morning's work is over. */
    private static final Duration MORNING = Duration.ofHours(8);

    private static final Duration BEFORE_ONSET = Duration.ofHours(1);
    private static final int PAST_EVENINGS = 7;
    private static final Set<Kind> WORTH_A_LOOK = Set.of(
            Kind.OVERHEATING,
            Kind.GONE,
            Kind.LEAKING,
            Kind.DEPARTURE,
            Kind.ROBBING,
            Kind.SCOUTING,
            Kind.LODGER,
            Kind.DISTURBED,
            Kind.FAULTY,
            Kind.UNHEARD,
            Kind.BATTERY_LOW);

    private final Store store;
    private final StoredCurve curves;
    private final StoredNights nights;
    private final VisitLog visits;
    private final AnswerLog answers;
    private final RoundSettings settings;

    StoredEvening(
            Store store,
            StoredCurve curves,
            StoredNights nights,
            VisitLog visits,
            AnswerLog answers,
            RoundSettings settings) {
        this.store = store;
        this.curves = curves;
        this.nights = nights;
        this.visits = visits;
        this.answers = answers;
        this.settings = settings;
    }

    Tonight tonight(Instant now, BrokerLink link, List<TrapNow> traps, List<Finding> standing) {
        ZoneId zone = traps.stream().findFirst().map(trap -> trap.trap().zone()).orElse(ZoneOffset.UTC);
        LocalDate evening = now.atZone(zone).minus(MORNING).toLocalDate();
        Map<String, List<Visit>> visited =
                visits.all().stream().map(KeptVisit::visit).collect(Collectors.groupingBy(Visit::trap));
        List<TrapTonight> candidates = traps.stream()
                .map(trap -> candidate(trap, evening, standing, visited))
                .toList();
        EveningSheet sheet = EveningSheet.of(evening, zone, now, candidates, settings);
        Optional<Night> night = traps.stream().findFirst().flatMap(first -> nights.after(first.trap(), evening));
        return new Tonight(now, link, sheet, night, looks(now, traps, standing, visited), traps.size());
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

    List<Visit> visitsAt(String trap) {
        return visits.of(trap).stream().map(KeptVisit::visit).toList();
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

    private static List<Look> looks(
            Instant now, List<TrapNow> traps, List<Finding> standing, Map<String, List<Visit>> visited) {
        List<Look> looks = new ArrayList<>();
        Set<String> unheard = new HashSet<>();
        standing.stream()
                .filter(finding -> WORTH_A_LOOK.contains(finding.kind()))
                .sorted(Comparator.comparing(Finding::onset).reversed())
                .forEach(finding -> looks.add(Look.at(finding)));
        standing.stream()
                .filter(finding -> finding.kind() == Kind.UNHEARD)
                .forEach(finding -> unheard.add(finding.trap()));
        for (TrapNow trap : traps) {
            Upkeep.due(
                            trap.name(),
                            visited.getOrDefault(trap.name(), List.of()),
                            trap.lastHeard(),
                            Optional.empty(),
                            now,
                            UpkeepLimits.USUAL)
                    .stream()
                    .filter(reminder -> !unheard.contains(trap.name()))
                    .forEach(reminder -> looks.add(new Look(trap.name(), Optional.empty(), reminder.said())));
        }
        return looks;
    }
}
