package org.duskline.analyzer.stats;

import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/** Gauss-Legendre points and weights on an interval. */
final class Nodes {
    private final GaussIntegrator rule;

    private Nodes(GaussIntegrator rule) {
        this.rule = rule;
    }

    static Nodes between(double low, double high, int count) {
        return new Nodes(new GaussIntegratorFactory().legendre(count, low, high));
    }

    int count() {
        return rule.getNumberOfPoints();
    }

    double point(int index) {
        return rule.getPoint(index);
    }

    double weight(int index) {
        return rule.getWeight(index);
    }
}
