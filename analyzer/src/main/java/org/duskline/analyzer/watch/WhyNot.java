package org.duskline.analyzer.watch;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.detect.DepartureCase;
import org.duskline.analyzer.detect.MoveInCase;
import org.duskline.analyzer.detect.RobbingCase;
import org.duskline.analyzer.detect.ScoutCase;
import org.duskline.analyzer.detect.SilentArrival;
import org.duskline.analyzer.detect.Surroundings;
import org.duskline.analyzer.detect.Thresholds;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Finding;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.collector.trap.Fitted;

/**
 * Looks for the moment of a stretch that came nearest to each kind of finding, with the same cases that the fold weighs.
 * No state, no clock.
 */
final class WhyNot {
    private static final long SETTLED_MILLIS = 2 * 3_600_000L;

    private final TrapSeries series;
    private final Fitted fitted;
    private final Thresholds thresholds;
    private final Surroundings surroundings;
    private final List<Finding> findings;

    /** One case that was weighed at one moment. */
    private record Weighed(long atMillis, double logOdds, List<Evidence> evidence) {}

    /** Weighs one kind at one sample; empty where its case is not even opened. */
    @FunctionalInterface
    private interface Case {
        Optional<Weighed> at(int index);
    }

    /** @param findings what was told at this trap under these thresholds */
    WhyNot(TrapSeries series, Fitted fitted, Thresholds thresholds, Surroundings surroundings, List<Finding> findings) {
        this.series = series;
        this.fitted = fitted;
        this.thresholds = thresholds;
        this.surroundings = surroundings;
        this.findings = findings;
    }

    /** @param until first moment left out */
    List<Nearest> between(Instant from, Instant until) {
        return List.of(
                nearest(Kind.MOVE_IN, thresholds.moveInOdds(), this::moveIn, from, until),
                nearest(Kind.SCOUTING, Math.exp(TrapFold.SCOUT_ODDS), this::scouts, from, until),
                robbers(from, until),
                nearest(Kind.DEPARTURE, thresholds.moveInOdds(), this::departure, from, until));
    }

    private Nearest nearest(Kind kind, double needed, Case weighing, Instant from, Instant until) {
        Optional<Weighed> best = Optional.empty();
        boolean asked = false;
        int first = Math.max(0, series.firstAfter(from.toEpochMilli() - 1));
        for (int i = first; i < series.size() && series.timeMillis(i) < until.toEpochMilli(); i++) {
            if (occupant(series.timeMillis(i)).isPresent() != (kind == Kind.DEPARTURE)) {
                continue;
            }
            asked = true;
            best = better(best, weighing.at(i));
        }
        if (best.isEmpty()) {
            return new Nearest(kind, Optional.empty(), Double.NaN, needed, List.of(), nothing(kind, asked));
        }
        Weighed weighed = best.get();
        return new Nearest(
                kind,
                Optional.of(Instant.ofEpochMilli(weighed.atMillis())),
                Math.exp(weighed.logOdds()),
                needed,
                weighed.evidence(),
                heldBack(kind, weighed, needed, from, until));
    }

    private static Optional<Weighed> better(Optional<Weighed> before, Optional<Weighed> now) {
        return now.filter(
                        one -> before.isEmpty() || one.logOdds() > before.get().logOdds())
                .or(() -> before);
    }

    private Optional<Weighed> moveIn(int i) {
        return MoveInCase.at(series, i, fitted, thresholds, surroundings)
                .or(() -> SilentArrival.at(series, i, fitted, surroundings))
                .map(found -> new Weighed(series.timeMillis(i), found.logOdds(), found.evidence()));
    }

    private Optional<Weighed> scouts(int i) {
        return fitted.hasCounter()
                ? ScoutCase.at(series, i, emptySince(i), thresholds, surroundings)
                        .map(found -> new Weighed(series.timeMillis(i), found.logOdds(), found.evidence()))
                : Optional.empty();
    }

    /** Robbers are weighed while they are there, and once more the morning after; what came nearer counts. */
    private Nearest robbers(Instant from, Instant until) {
        Nearest atOnce = nearest(Kind.ROBBING, Math.exp(Robbing.LOG_ODDS), this::robbersNow, from, until);
        Nearest nextMorning =
                nearest(Kind.ROBBING, Math.exp(Robbing.NEXT_MORNING_LOG_ODDS), robbersYesterday(from), from, until);
        if (nextMorning.at().isEmpty()) {
            return atOnce;
        }
        double nearer = nextMorning.odds() / nextMorning.needed() - atOnce.odds() / atOnce.needed();
        return nearer < 0 ? atOnce : nextMorning;
    }

    private Optional<Weighed> robbersNow(int i) {
        return fitted.hasCounter()
                ? RobbingCase.at(series, i, fitted, emptySince(i), thresholds, surroundings)
                        .map(found -> new Weighed(series.timeMillis(i), found.logOdds(), found.evidence()))
                : Optional.empty();
    }

    private Case robbersYesterday(Instant from) {
        StrippedDays days = new StrippedDays();
        for (int i = 0; fitted.hasScale() && i < series.firstAfter(from.toEpochMilli() - 1); i++) {
            if (occupant(series.timeMillis(i)).isPresent()) {
                continue;
            }
            days.look(series, i, fitted, emptySince(i), surroundings);
        }
        return i -> fitted.hasScale()
                ? days.look(series, i, fitted, emptySince(i), surroundings)
                        .map(found -> new Weighed(series.timeMillis(i), found.logOdds(), found.evidence()))
                : Optional.empty();
    }

    private Optional<Weighed> departure(int i) {
        return occupant(series.timeMillis(i))
                .filter(swarm -> series.timeMillis(i) - swarm.raised().toEpochMilli() > SETTLED_MILLIS)
                .flatMap(Finding::size)
                .flatMap(size -> DepartureCase.at(series, i, fitted, size.kg(), thresholds, surroundings))
                .map(found -> new Weighed(series.timeMillis(i), found.logOdds(), found.evidence()));
    }

    /** The move-in whose swarm lived in the trap at a moment. */
    private Optional<Finding> occupant(long timeMillis) {
        return findings.stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN
                        && finding.raised().toEpochMilli() < timeMillis
                        && (finding.standing() || finding.changed().toEpochMilli() >= timeMillis))
                .findFirst();
    }

    /** When the last swarm that lived in the trap before a sample was gone; long ago where there was none. */
    private long emptySince(int i) {
        return findings.stream()
                .filter(finding -> finding.kind() == Kind.MOVE_IN && !finding.standing())
                .mapToLong(finding -> finding.changed().toEpochMilli())
                .filter(changed -> changed <= series.timeMillis(i))
                .max()
                .orElse(Long.MIN_VALUE);
    }

    private String heldBack(Kind kind, Weighed weighed, double needed, Instant from, Instant until) {
        boolean told = findings.stream()
                .anyMatch(finding -> finding.kind() == kind
                        && !finding.raised().isBefore(from)
                        && finding.raised().isBefore(until));
        if (told) {
            return "Nothing: it was told.";
        }
        if (weighed.logOdds() >= Math.log(needed)) {
            return "It had been told before, or something that was told stood in its way.";
        }
        return weighed.evidence().stream()
                .filter(piece -> piece.logOdds() < 0)
                .min(Comparator.comparingDouble(Evidence::logOdds))
                .map(piece -> "Above all: " + piece.said() + ".")
                .orElse("Nothing spoke against it, but too little for it.");
    }

    private String nothing(Kind kind, boolean asked) {
        if (!asked) {
            return kind == Kind.DEPARTURE
                    ? "No swarm lived in the trap."
                    : "There were no samples, or a swarm lived in the trap already.";
        }
        return switch (kind) {
            case MOVE_IN ->
                fitted == Fitted.SCALE
                        ? said(
                                "The weight never grew by half the smallest swarm, %.2f kg, and stayed there.",
                                thresholds.smallestSwarmKg() / 2)
                        : "There was no rush: never were 60 more in than out.";
            case SCOUTING ->
                fitted.hasCounter()
                        ? said(
                                "There were never %.1f crossings a minute for half an hour.",
                                thresholds.scoutsPerMinute())
                        : "No counter is fitted: scouts weigh nothing.";
            case ROBBING ->
                (fitted.hasCounter()
                                ? "The entrance was never busy enough for two and a half hours without a pause. "
                                : "No counter is fitted. ")
                        + (fitted.hasScale()
                                ? "Nor was there a morning by which this box had been weighed for four days and nights,"
                                        + " and three other empty ones in the last two."
                                : "No scale is fitted.");
            default -> "There was no rush outward, and the weight did not fall.";
        };
    }

    private static String said(String words, double value) {
        return String.format(Locale.ROOT, words, value);
    }
}
