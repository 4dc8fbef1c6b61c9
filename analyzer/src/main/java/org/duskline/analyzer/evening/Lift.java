package org.duskline.analyzer.evening;

import java.util.Locale;

/**
 * What there is to lift down: the box and the swarm in it.
 *
 * @param boxKg the empty box; NaN where not weighed
 * @param swarmKg the swarm; NaN where not known
 * @param swarmHighKg the most it may be; NaN where not known
 */
public record Lift(double boxKg, double swarmKg, double swarmHighKg) {
    /** From here on two people should lift: common practice; local rules on lifting decide. */
    public static final double TWO_PEOPLE_KG = 15;

    /** An empty box with fittings, to reckon with where nobody weighed it: common practice, 8 to 15 kg early on. */
    private static final double UNWEIGHED_BOX_KG = 15;

    /** A large swarm, to reckon with where none was estimated: Villa 2004, the heaviest of his swarms. */
    private static final double UNWEIGHED_SWARM_KG = 4.3;

    /** Box and swarm together; NaN where either is unknown. */
    public double kg() {
        return boxKg + swarmKg;
    }

    /** What to be ready for. */
    public double atMostKg() {
        double box = Double.isNaN(boxKg) ? UNWEIGHED_BOX_KG : boxKg;
        double swarm = Double.isNaN(swarmHighKg) ? Double.isNaN(swarmKg) ? UNWEIGHED_SWARM_KG : swarmKg : swarmHighKg;
        return box + swarm;
    }

    public boolean takesTwo() {
        return atMostKg() >= TWO_PEOPLE_KG;
    }

    /** In words: "9.8 kg (box 8.2 + swarm 1.6), at most 10.6". */
    public String said() {
        if (Double.isNaN(kg())) {
            return String.format(
                    Locale.ROOT,
                    "up to %.0f kg (%s not weighed)",
                    atMostKg(),
                    Double.isNaN(boxKg) ? Double.isNaN(swarmKg) ? "box and swarm" : "box" : "swarm");
        }
        return String.format(
                Locale.ROOT, "%.1f kg (box %.1f + swarm %.1f), at most %.1f", kg(), boxKg, swarmKg, atMostKg());
    }
}
