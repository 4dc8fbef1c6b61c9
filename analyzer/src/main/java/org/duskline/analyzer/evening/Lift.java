package org.duskline.analyzer.evening;

import java.util.Locale;

/**
 * What there is to lift down: the box and the swarm in it.
 *
 * @param boxKg the empty box as its scale reads it; NaN where not weighed, or where the scale was zeroed with the box on it
 * @param swarmKg the swarm; NaN where not known
 * @param swarmHighKg the most it may be; NaN where not known
 */
public record Lift(double boxKg, double swarmKg, double swarmHighKg) {
    /** From here on two people should lift: common practice; local rules on lifting decide. */
    public static final double TWO_PEOPLE_KG = 15;

    /** No box with combs and straps weighs less, so a scale that says so leaves the box out: common practice. */
    private static final double LIGHTEST_BOX_KG = 2;

    /** An empty box with fittings, to reckon with where nobody weighed it: common practice, 8 to 15 kg early on. */
    private static final double UNWEIGHED_BOX_KG = 15;

    /** A large swarm, to reckon with where none was estimated: Villa 2004, the heaviest of his swarms. */
    private static final double UNWEIGHED_SWARM_KG = 4.3;

    public Lift {
        boxKg = boxKg < LIGHTEST_BOX_KG ? Double.NaN : boxKg;
    }

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

    /** In words: "9.8 kg (box 8.2 + swarm 1.6), at most 10.6", "up to 17 kg (swarm 1.4; box not weighed)". */
    public String said() {
        if (Double.isNaN(kg())) {
            return String.format(Locale.ROOT, "up to %.0f kg (%s)", atMostKg(), whatIsKnown());
        }
        return String.format(
                Locale.ROOT, "%.1f kg (box %.1f + swarm %.1f), at most %.1f", kg(), boxKg, swarmKg, atMostKg());
    }

    private String whatIsKnown() {
        if (Double.isNaN(boxKg) && Double.isNaN(swarmKg)) {
            return "box and swarm not weighed yet";
        }
        return Double.isNaN(boxKg)
                ? String.format(Locale.ROOT, "swarm %.1f; box not weighed", swarmKg)
                : String.format(Locale.ROOT, "box %.1f; swarm not weighed yet", boxKg);
    }
}
