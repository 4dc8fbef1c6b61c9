package org.duskline.web.page;

import java.util.Comparator;
import java.util.List;
import org.duskline.analyzer.finding.Evidence;

/**
 * A piece of evidence beside the others.
 *
 * @param piece what was seen and what it weighs
 * @param from left end of its bar, per cent of the field; for runs right from the middle, against runs left
 * @param width of its bar, per cent of the field; the weightiest piece fills its half
 */
public record Weighed(Evidence piece, double from, double width) {
    private static final int HALF = 50;

    /** In the order of their weight, for and against mixed. */
    public static List<Weighed> of(List<Evidence> evidence) {
        double most = evidence.stream()
                .mapToDouble(piece -> Math.abs(piece.logOdds()))
                .max()
                .orElse(1);
        return evidence.stream()
                .sorted(Comparator.comparingDouble((Evidence piece) -> -Math.abs(piece.logOdds())))
                .map(piece -> beside(piece, most))
                .toList();
    }

    private static Weighed beside(Evidence piece, double most) {
        double width = Math.round(10 * HALF * Math.abs(piece.logOdds()) / most) / 10.0;
        return new Weighed(piece, piece.logOdds() < 0 ? HALF - width : HALF, width);
    }

    public boolean against() {
        return piece.logOdds() < 0;
    }
}
