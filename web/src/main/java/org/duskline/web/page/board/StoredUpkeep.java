package org.duskline.web.page.board;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.duskline.analyzer.closed.NotFetched;
import org.duskline.analyzer.closed.Notice;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.upkeep.BatteryOutlook;
import org.duskline.analyzer.upkeep.Reminder;
import org.duskline.analyzer.upkeep.Upkeep;
import org.duskline.analyzer.visit.Closing;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.store.Store;
import org.duskline.collector.wire.Sample;

/** What else needs a look: what stands and is not for tonight's round, a swarm not fetched, and chores that are due. */
final class StoredUpkeep {
    private static final Set<Kind> WORTH_A_LOOK = Set.of(
            Kind.OVERHEATING,
            Kind.GONE,
            Kind.LEAKING,
            Kind.DEPARTURE,
            Kind.ROBBING,
            Kind.SCOUTING,
            Kind.DISTURBED,
            Kind.FAULTY,
            Kind.UNHEARD,
            Kind.BATTERY_LOW);

    private static final Set<Reminder.What> OF_THE_NODE = Set.of(Reminder.What.BATTERY, Reminder.What.UNHEARD);

    /** A battery goes down over weeks; fitting it anew for every page would read weeks of samples each time. */
    private static final Duration OUTLOOK_HOLDS = Duration.ofHours(6);

    private static final Duration OUTLOOK_FROM = Duration.ofDays(21);

    private final Store store;
    private final Habits habits;
    private final Map<String, Outlook> outlooks = new ConcurrentHashMap<>();

    private record Outlook(Instant made, Optional<BatteryOutlook> battery) {}

    StoredUpkeep(Store store, Habits habits) {
        this.store = store;
        this.habits = habits;
    }

    List<Look> looks(Instant now, List<TrapNow> traps, List<Finding> standing, Map<String, List<Visit>> visited) {
        List<Look> looks = new ArrayList<>();
        traps.forEach(trap -> notFetched(trap, now, visited).ifPresent(looks::add));
        standing.stream()
                .filter(finding -> WORTH_A_LOOK.contains(finding.kind()))
                .sorted(Comparator.comparing(Finding::onset).reversed())
                .forEach(finding -> looks.add(Look.at(finding)));
        traps.forEach(trap -> chores(trap, now, standing, visited).forEach(looks::add));
        return looks;
    }

    /** What is due at one trap, findings left out: a swarm to fetch, and chores. */
    List<String> due(Instant now, TrapNow trap, List<Finding> standing, List<Visit> visits) {
        Map<String, List<Visit>> visited = Map.of(trap.name(), visits);
        return Stream.concat(notFetched(trap, now, visited).stream(), chores(trap, now, standing, visited).stream())
                .map(Look::what)
                .toList();
    }

    private Optional<Look> notFetched(TrapNow trap, Instant now, Map<String, List<Visit>> visited) {
        return Closing.standing(visited.getOrDefault(trap.name(), List.of()))
                .flatMap(closing -> NotFetched.find(closing.from(), Optional.empty(), now, habits.closed()))
                .map(Notice::said)
                .map(said -> new Look(trap.name(), Optional.empty(), said));
    }

    private List<Look> chores(TrapNow trap, Instant now, List<Finding> standing, Map<String, List<Visit>> visited) {
        Set<Kind> told = standing.stream()
                .filter(finding -> finding.trap().equals(trap.name()))
                .map(Finding::kind)
                .collect(Collectors.toSet());
        List<Visit> visits = visited.getOrDefault(trap.name(), List.of());
        boolean unvisited = visits.isEmpty();
        return Upkeep.due(
                        trap.name(),
                        unvisited ? hungUnrecorded(trap) : visits,
                        trap.lastHeard(),
                        battery(trap, now),
                        now,
                        habits.upkeep())
                .stream()
                .filter(reminder -> !unvisited || OF_THE_NODE.contains(reminder.what()))
                .filter(reminder -> !(reminder.what() == Reminder.What.UNHEARD && told.contains(Kind.UNHEARD)))
                .map(reminder -> new Look(trap.name(), Optional.empty(), reminder.said()))
                .toList();
    }

    /** A keeper who writes nothing down still wants to know about batteries and silence. */
    private static List<Visit> hungUnrecorded(TrapNow trap) {
        return trap.measured()
                .map(heard -> List.of(Visit.of(trap.name(), VisitKind.SET, heard, "nobody")))
                .orElse(List.of());
    }

    private Optional<BatteryOutlook> battery(TrapNow trap, Instant now) {
        return trap.node()
                .flatMap(node -> outlooks.compute(
                                node, (name, known) -> known != null && holds(known, now) ? known : fitted(name, now))
                        .battery());
    }

    private static boolean holds(Outlook known, Instant now) {
        return Duration.between(known.made(), now).compareTo(OUTLOOK_HOLDS) < 0;
    }

    private Outlook fitted(String node, Instant now) {
        List<Sample> samples = new ArrayList<>();
        store.samples().read(node, now.minus(OUTLOOK_FROM), now, samples::add);
        return new Outlook(now, BatteryOutlook.fit(samples, habits.upkeep().emptyVolts()));
    }
}
