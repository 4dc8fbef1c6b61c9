package org.duskline.web.page;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.duskline.analyzer.finding.Evidence;
import org.duskline.analyzer.finding.Kind;
import org.duskline.analyzer.watch.Nearest;

/** How near a stretch came to each kind of finding, in words: for the terminal, and for the page. */
public final class WhyText {
    private static final double MOST_ODDS = 1_000_000;

    private WhyText() {}

    /** All kinds as plain text, instants in UTC. */
    public static String of(List<Nearest> nearest) {
        StringBuilder text = new StringBuilder();
        for (Nearest one : nearest) {
            text.append(one.kind().wireName());
            one.at()
                    .ifPresent(at -> text.append(": nearest at ")
                            .append(at)
                            .append(", ")
                            .append(odds(one.odds()))
                            .append(" (")
                            .append(needed(one.needed()))
                            .append(')'));
            text.append("\n  ").append(one.heldBack()).append('\n');
            for (Evidence piece : one.evidence()) {
                text.append(String.format(Locale.ROOT, "  %+5.1f  %s%n", piece.logOdds(), piece.said()));
            }
        }
        return text.toString();
    }

    /** What a kind is called where it is only asked after. */
    public static String kind(Kind kind) {
        return switch (kind) {
            case MOVE_IN -> "A move-in";
            case SCOUTING -> "Scouting";
            case ROBBING -> "Robbing";
            case DEPARTURE -> "A departure";
            default -> Words.kind(kind);
        };
    }

    /** Such as "12 to 1 for it". */
    public static String odds(double odds) {
        if (odds >= 1) {
            return (odds > MOST_ODDS ? "more than a million" : whole(odds)) + " to 1 for it";
        }
        return (odds < 1 / MOST_ODDS ? "more than a million" : whole(1 / odds)) + " to 1 against it";
    }

    /**
     * How it stood before anything was measured: what the evidence doesn't account for.
     *
     * @param odds with all of the evidence, to one
     * @return empty where that can't be told
     */
    public static Optional<String> before(double odds, List<Evidence> evidence) {
        double measured = evidence.stream().mapToDouble(Evidence::logOdds).sum();
        double before = Math.exp(Math.log(odds) - measured);
        return before > 0 && Double.isFinite(before) ? Optional.of(odds(before)) : Optional.empty();
    }

    /** From which odds on it is told. */
    public static String needed(double odds) {
        boolean whole = Math.abs(odds - Math.rint(odds)) < 0.05;
        return "told from " + (whole ? whole(odds) : String.format(Locale.ROOT, "%.1f", odds)) + " to 1 on";
    }

    private static String whole(double odds) {
        return String.format(Locale.ROOT, "%,.0f", odds);
    }
}
