package org.duskline.analyzer.detect;

/**
 * The numbers a keeper can turn, in the trade's units. Few on purpose.
 *
 * @param smallestSwarmKg the lightest swarm worth a drive, kg; lower catches casts, and more rain and hands
 * @param moveInOdds how sure before a move-in is told, odds to one; higher waits longer and errs less
 * @param scoutsPerMinute crossings a minute, both ways, kept for half an hour, that count as scouts
 * @param robbersPerMinute crossings a minute, both ways, kept for hours while the weight falls, that count as robbers
 * @param flightCelsius below this bees do not fly; common practice says 10 to 15
 * @param unheardHours silence before a node counts as unheard
 * @param batteryVolts battery voltage that counts as low
 */
public record Thresholds(
        double smallestSwarmKg,
        double moveInOdds,
        double scoutsPerMinute,
        double robbersPerMinute,
        double flightCelsius,
        double unheardHours,
        double batteryVolts) {
    public Thresholds {
        within("smallestSwarmKg", smallestSwarmKg, 0.05, 3);
        within("moveInOdds", moveInOdds, 1, 100_000);
        within("scoutsPerMinute", scoutsPerMinute, 0.1, 60);
        within("robbersPerMinute", robbersPerMinute, 1, 500);
        within("flightCelsius", flightCelsius, 5, 18);
        within("unheardHours", unheardHours, 0.5, 72);
        within("batteryVolts", batteryVolts, 0.5, 60);
    }

    /** The defaults that the promises are measured with. */
    public static Thresholds defaults() {
        return new Thresholds(0.25, 20, 0.8, 3, 10, 6, 3.4);
    }

    private static void within(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(
                    name + " is " + value + "; it must lie between " + low + " and " + high + ".");
        }
    }
}
