package org.duskline.analyzer.watch;

import java.util.Arrays;
import java.util.Collection;
import org.duskline.analyzer.series.TrapSeries;
import org.duskline.analyzer.series.TrapSeries.Quantity;

/** The weather as the line has it from its own nodes: from their thermometers, the damp of the air, and scales that soak. */
final class LineWeather {
    private static final long HOUR = 3_600_000L;

    /** So many scales of which none gains say that damp air is only damp; own choice. */
    private static final int TRUSTED_SCALES = 3;

    private static final double DAMP_AIR_ALONE = 0.25;

    private final Collection<TrapWatch> line;
    private final NeighbourScales scales;

    /** @param scales those that may say that it rains: one's own trap may be taking in a swarm */
    LineWeather(Collection<TrapWatch> line, NeighbourScales scales) {
        this.line = line;
        this.scales = scales;
    }

    /** Temperature in the shade, degrees Celsius, from the boxes where the shade is unknown; NaN when nobody measured it. */
    double outsideCelsius(long timeMillis) {
        double shade = shadeCelsius(timeMillis);
        return Double.isNaN(shade) ? middle(Quantity.BOX, timeMillis) : shade;
    }

    /** Temperature in the shade as the scales' own thermometers have it, degrees Celsius; NaN where none is near. */
    double shadeCelsius(long timeMillis) {
        return middle(Quantity.CELL, timeMillis);
    }

    private double middle(Quantity quantity, long timeMillis) {
        double[] values = new double[line.size()];
        int n = 0;
        for (TrapWatch watch : line) {
            TrapSeries series = watch.series();
            int at = series.lastAt(timeMillis);
            if (at >= 0 && timeMillis - series.timeMillis(at) <= HOUR) {
                double value = series.value(quantity, at);
                if (!Double.isNaN(value)) {
                    values[n++] = value;
                }
            }
        }
        return median(values, n);
    }

    /** How surely it rained within the hour before, 0 to 1. */
    double rain(long timeMillis) {
        double[] humidities = new double[line.size()];
        int nHumidities = 0;
        int known = 0;
        int wet = 0;
        for (TrapWatch watch : line) {
            TrapSeries series = watch.series();
            int at = series.lastAt(timeMillis);
            if (at < 4 || timeMillis - series.timeMillis(at) > HOUR) {
                continue;
            }
            double humidity = series.value(Quantity.HUMIDITY, at);
            if (!Double.isNaN(humidity)) {
                humidities[nHumidities++] = humidity;
            }
            double gain = scales.gainKg(watch, timeMillis - HOUR, timeMillis);
            known += Double.isNaN(gain) ? 0 : 1;
            wet += gain > 0.025 && gain < 3 ? 1 : 0;
        }
        double humid = nHumidities == 0 ? 0 : 0.6 * between(median(humidities, nHumidities), 82, 95);
        if (known >= TRUSTED_SCALES && wet == 0) {
            humid *= DAMP_AIR_ALONE;
        }
        double soaking = wet < 2 ? 0 : between(wet / (double) known, 0.2, 0.5);
        return Math.min(1, Math.max(soaking, humid) + 0.3 * Math.min(soaking, humid));
    }

    private static double between(double value, double low, double high) {
        return Math.max(0, Math.min(1, (value - low) / (high - low)));
    }

    private static double median(double[] values, int n) {
        if (n == 0) {
            return Double.NaN;
        }
        Arrays.sort(values, 0, n);
        return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
    }
}
