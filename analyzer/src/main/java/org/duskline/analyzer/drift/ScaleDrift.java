package org.duskline.analyzer.drift;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.duskline.analyzer.drift.HourlyMedians.Hour;
import org.duskline.analyzer.stats.Interval;
import org.duskline.analyzer.stats.Robust;
import org.duskline.analyzer.stats.TheilSen;
import org.duskline.collector.wire.Sample;

/**
 * A scale's temperature coefficient. Learned from what weight and cell temperature did from one hour to the next, so that
 * a swarm, rain and the slow breathing of the wood hardly enter; the line through these is Theil and Sen's, which a few
 * wild hours cannot bend. OIML R 60 allows a class C cell 0.7 times its smallest interval for 5 C; unclassed cells and
 * their mounts show 1 to 5 g a degree (common practice).
 *
 * @param kgPerCelsius how much more the scale shows for each degree
 * @param interval the 95 % interval of it
 * @param referenceCelsius the median temperature, at which nothing is corrected
 * @param hours how many pairs of hours it rests on
 */
public record ScaleDrift(double kgPerCelsius, Interval interval, double referenceCelsius, int hours) {
    private static final double CONFIDENCE = 0.95;

    /** A larger change within an hour is bees, rain or hands; own choice. */
    private static final double LARGEST_CHANGE_KG = 0.06;

    private static final double SMALLEST_CHANGE_CELSIUS = 0.3;
    private static final int FEWEST_PAIRS = 40;
    private static final int MOST_PAIRS = 400;

    /** Learns from a node's samples in time order, the last weeks of them; empty where they are too few to tell. */
    public static Optional<ScaleDrift> of(List<Sample> samples) {
        List<Hour> hours = HourlyMedians.of(samples).hours();
        double[] celsius = new double[MOST_PAIRS];
        double[] kg = new double[MOST_PAIRS];
        int pairs = 0;
        for (int i = hours.size() - 1; i > 0 && pairs < MOST_PAIRS; i--) {
            Hour before = hours.get(i - 1);
            Hour after = hours.get(i);
            double warmed = after.celsius() - before.celsius();
            double gained = after.kg() - before.kg();
            if (after.hour() == before.hour() + 1
                    && Math.abs(warmed) >= SMALLEST_CHANGE_CELSIUS
                    && Math.abs(gained) <= LARGEST_CHANGE_KG) {
                celsius[pairs] = warmed;
                kg[pairs++] = gained;
            }
        }
        if (pairs < FEWEST_PAIRS) {
            return Optional.empty();
        }
        TheilSen line = TheilSen.fit(Arrays.copyOf(celsius, pairs), Arrays.copyOf(kg, pairs), CONFIDENCE);
        double reference =
                Robust.median(hours.stream().mapToDouble(Hour::celsius).toArray());
        return Optional.of(new ScaleDrift(line.slope(), line.slopes(), reference, pairs));
    }

    /** Whether the scale surely moves with temperature: the interval leaves zero out. */
    public boolean sure() {
        return interval.low() > 0 || interval.high() < 0;
    }

    /** The weight as it would be at the reference temperature; unchanged where the temperature is not known. */
    public double corrected(double weightKg, double cellCelsius) {
        return Double.isNaN(cellCelsius) || !sure()
                ? weightKg
                : weightKg - kgPerCelsius * (cellCelsius - referenceCelsius);
    }
}
