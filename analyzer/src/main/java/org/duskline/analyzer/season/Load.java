package org.duskline.analyzer.season;

/** One cause of weight on the hook. */
interface Load {
    /** Kilograms at a moment, Unix seconds; asked in order of time. */
    double kg(double t);
}
