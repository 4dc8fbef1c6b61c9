package org.duskline.analyzer.series;

/**
 * Turns the readings of a counter that starts from zero at every restart into one total that only grows. A restart shows
 * by a raised boot number or by two lower values in a row; a single dip that returns to the old run is a read error and
 * must not count the day twice. A jump beyond what an entrance can pass waits for the next reading to confirm it.
 */
final class CounterRun {
    /** Most crossings a minute that any entrance passes; above that a reading is an error. Invented, generous. */
    private static final double MOST_PER_MINUTE = 3000;

    /** After this many readings a new run is no longer taken for a long dip of the old one. */
    private static final int LONGEST_DIP = 4;

    private double run = Double.NaN;
    private double total;
    private long boot = -1;
    private double held = Double.NaN;
    private double oldRun = Double.NaN;
    private double oldTotal;
    private int readingsSinceRestart = LONGEST_DIP + 1;

    CounterRun(double total) {
        this.total = total;
    }

    /**
     * Takes the next reading.
     *
     * @param reading the counter's value, NaN when it was not sent
     * @param readingBoot the node's boot number, -1 when not sent
     * @param minutes time since the reading before
     * @return the total up to now
     */
    double next(double reading, long readingBoot, double minutes) {
        if (Double.isNaN(reading)) {
            return total;
        }
        boolean started = readingBoot >= 0 && boot >= 0 && readingBoot > boot;
        boot = Math.max(boot, readingBoot);
        readingsSinceRestart++;
        if (Double.isNaN(run)) {
            run = reading;
        } else if (started) {
            restart(plausible(reading, minutes) ? reading : 0, reading);
        } else if (returnsToOldRun(reading, minutes)) {
            total = oldTotal + reading - oldRun;
            run = reading;
            readingsSinceRestart = LONGEST_DIP + 1;
            held = Double.NaN;
        } else if (reading >= run && plausible(reading - run, minutes)) {
            advance(reading);
        } else {
            hold(reading, minutes);
        }
        return total;
    }

    private void advance(double reading) {
        total += reading - run;
        run = reading;
        held = Double.NaN;
    }

    private void hold(double reading, double minutes) {
        if (Double.isNaN(held) || (held < run) != (reading < run)) {
            held = reading;
        } else if (reading < run) {
            double counted = reading >= held && plausible(reading, minutes) ? reading : 0;
            restart(counted, reading);
        } else {
            total += reading >= held && plausible(reading - held, minutes) ? reading - held : 0;
            run = reading;
            held = Double.NaN;
        }
    }

    private void restart(double counted, double reading) {
        oldRun = run;
        oldTotal = total;
        total += counted;
        run = reading;
        held = Double.NaN;
        readingsSinceRestart = 0;
    }

    private boolean returnsToOldRun(double reading, double minutes) {
        return readingsSinceRestart <= LONGEST_DIP
                && reading >= oldRun
                && plausible(reading - oldRun, minutes)
                && !plausible((reading - run) * 20, minutes);
    }

    private static boolean plausible(double bees, double minutes) {
        return bees <= 100 + MOST_PER_MINUTE * Math.max(minutes, 0.2);
    }
}
