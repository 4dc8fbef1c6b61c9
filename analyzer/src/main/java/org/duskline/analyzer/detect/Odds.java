package org.duskline.analyzer.detect;

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
    private final List<Evidence> evidence = new ArrayList<>();
    private double logOdds;

    Odds(double prior) {
        this.logOdds = prior;
    }

    Odds add(double nats, String said, Object... values) {
        logOdds += nats;
        if (nats != 0) {
            evidence.add(new Evidence(String.format(Locale.ROOT, said, values), nats));
        }
        return this;
    }

    double logOdds() {
        return logOdds;
    }

    double probability() {
        return 1 / (1 + Math.exp(-logOdds));
    }

    List<Evidence> weightiestFirst() {
        return evidence.stream()
                .sorted(Comparator.comparingDouble((Evidence e) -> -Math.abs(e.logOdds())))
                .toList();
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
