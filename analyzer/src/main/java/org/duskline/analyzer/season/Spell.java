package org.duskline.analyzer.season;

/** Something that lasts, in Unix seconds. */
public interface Spell {
    double start();

    double end();

    default boolean covers(double second) {
        return second >= start() && second < end();
    }
}
