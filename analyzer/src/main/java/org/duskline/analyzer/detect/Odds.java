package org.duskline.analyzer.detect;

import java.util.AbstractList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.duskline.analyzer.finding.Evidence;

/**
 * A sum of evidence in nats (natural logarithm of a likelihood ratio) on top of a prior. Naive in the sense of Bayes:
 * the pieces are taken as independent, so each is capped.
 */
final class Odds {
    private final List<Piece> pieces = new ArrayList<>();
    private double logOdds;

    /** Kept unformatted: of thousands of cases that are weighed, one is told. */
    private record Piece(double nats, String said, Object[] values) {
        Evidence told() {
            return new Evidence(String.format(Locale.ROOT, said, values), nats);
        }
    }

    Odds(double prior) {
        this.logOdds = prior;
    }

    Odds add(double nats, String said, Object... values) {
        logOdds += nats;
        if (nats != 0) {
            pieces.add(new Piece(nats, said, values));
        }
        return this;
    }

    double logOdds() {
        return logOdds;
    }

    double probability() {
        return 1 / (1 + Math.exp(-logOdds));
    }

    /** What speaks for and against, put into words when the list is first read. */
    List<Evidence> weightiestFirst() {
        return new AbstractList<>() {
            private List<Evidence> told;

            @Override
            public Evidence get(int index) {
                return told().get(index);
            }

            @Override
            public int size() {
                return pieces.size();
            }

            private List<Evidence> told() {
                if (told == null) {
                    told = pieces.stream()
                            .sorted(Comparator.comparingDouble((Piece piece) -> -Math.abs(piece.nats())))
                            .map(Piece::told)
                            .toList();
                }
                return told;
            }
        };
    }

    /**
     * A straight line between points, flat outside them.
     *
     * @param x where to read it
     * @param points x and y in turn, x ascending
     */
    static double through(double x, double... points) {
        if (!(x > points[0])) {
            return points[1];
        }
        for (int i = 2; i < points.length; i += 2) {
            if (x <= points[i]) {
                double share = (x - points[i - 2]) / (points[i] - points[i - 2]);
                return points[i - 1] + share * (points[i + 1] - points[i - 1]);
            }
        }
        return points[points.length - 1];
    }
}
