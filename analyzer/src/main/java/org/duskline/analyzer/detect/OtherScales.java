package org.duskline.analyzer.detect;

/**
 * What the other scales of a line say about a stretch of time.
 *
 * @param speaking how many of them have been heard of in the last hours
 * @param heard how many of them were heard of for most of the stretch
 * @param soaked how many of those gained weight
 */
public record OtherScales(int speaking, int heard, int soaked) {
    private static final int ENOUGH = 2;

    /** A thundershower of 20 mm within the hour leaves less in a box; own choice. */
    private static final double SOAKING_KG_PER_MINUTE = 0.05;

    /** Another swarm, a bird or hands may be at one of them: as little counts as one alone, own choice. */
    private static final double ONE_ALONE = 0.1;

    /** Share of them that gained, 0 to 1; NaN where none was heard of. */
    double soakedShare() {
        double share = soaked / (double) heard;
        return soaked < ENOUGH ? Math.min(share, ONE_ALONE) : share;
    }

    /**
     * What it weighs, in nats, that none of them is known to have gained within so many minutes: a shower comes to one box
     * first, and the more boxes stay dry the longer, the surer it was none. What comes faster than water soaks in needs fewer
     * of them. Nothing where no others hang that could tell. Own choice.
     *
     * @param kgPerMinute how fast this box gained
     */
    double stayedDry(double minutes, double kgPerMinute) {
        if (speaking < ENOUGH) {
            return 0;
        }
        double dry = heard + Odds.through(kgPerMinute, SOAKING_KG_PER_MINUTE, 0, 2 * SOAKING_KG_PER_MINUTE, 3);
        double soon = Math.min(1.5, -1.5 + 0.5 * dry);
        double late = Math.min(1.5, -1.5 + 0.9 * dry);
        return Odds.through(minutes, 8, -1.5, 25, soon, 60, late);
    }
}
