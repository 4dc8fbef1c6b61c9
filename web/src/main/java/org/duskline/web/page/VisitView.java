package org.duskline.web.page;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.visit.KeptVisit;
import org.duskline.analyzer.visit.Visit;
import org.duskline.analyzer.visit.VisitKind;
import org.duskline.collector.trap.Trap;

/**
 * The page on which a visit is written down or corrected.
 *
 * @param trap where it was
 * @param what what was done
 * @param filled what stands in the fields
 * @param mark a fresh mark for this writing
 * @param history every edition, first to last; empty for a visit that is not written down yet
 * @param complaint what was wrong with the last try; may be empty
 * @param now the instant the page was made
 */
public record VisitView(
        Trap trap, VisitKind what, Filled filled, String mark, List<KeptVisit> history, String complaint, Instant now) {
    public VisitView {
        history = List.copyOf(history);
    }

    /** What stands in the fields, as text. */
    public record Filled(String at, String massKg, String whereTo, String note) {
        static final Filled NOTHING = new Filled("", "", "", "");

        static Filled of(Visit visit, Trap trap) {
            return new Filled(
                    local(visit.at(), trap).toString(),
                    Double.isNaN(visit.massKg()) ? "" : Words.number(visit.massKg(), 2),
                    visit.whereTo().orElse(""),
                    visit.note());
        }
    }

    private static LocalDateTime local(Instant time, Trap trap) {
        return LocalDateTime.ofInstant(time, trap.zone()).truncatedTo(ChronoUnit.MINUTES);
    }

    public Optional<KeptVisit> kept() {
        return history.isEmpty() ? Optional.empty() : Optional.of(history.get(history.size() - 1));
    }

    public boolean struck() {
        return kept().filter(KeptVisit::struck).isPresent();
    }

    /** The heading: what was done, or what is about to be written down. */
    public String title() {
        return struck() ? "Struck out: " + Words.visit(what) : Words.visit(what);
    }

    public String action() {
        return kept().map(kept -> "/visits/" + kept.id()).orElseGet(() -> Links.trap(trap.name()) + "/visits");
    }

    /** The latest that the field for another time takes. */
    public String latest() {
        return local(now, trap).toString();
    }

    /** What was on the way, in one line of the history. */
    public static String said(KeptVisit kept, Trap trap, Instant now) {
        Visit visit = kept.visit();
        if (kept.struck()) {
            return "said that it never was";
        }
        return Words.visit(visit.kind()) + " " + Words.moment(visit.at(), now, trap.zone())
                + (Double.isNaN(visit.massKg()) ? "" : ", " + Words.kg(visit.massKg()) + " kg")
                + visit.whereTo().map(place -> ", taken to " + place).orElse("")
                + (visit.note().isEmpty() ? "" : ": " + visit.note());
    }
}
