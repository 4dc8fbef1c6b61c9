package org.duskline.analyzer.season;

/** One cause of what passes the entrance. */
interface Traffic {
    /** Adds what passes at a moment, Unix seconds; asked in order of time. */
    void add(double t, Flow flow);
}
