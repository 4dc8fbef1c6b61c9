package org.duskline.analyzer.season;

/** Bees through the entrance at one moment, per minute each way. A plain accumulator for the causes of traffic. */
final class Flow {
    double in;
    double out;

    void clear() {
        in = 0;
        out = 0;
    }

    void add(double inward, double outward) {
        in += inward;
        out += outward;
    }

    double total() {
        return in + out;
    }
}
