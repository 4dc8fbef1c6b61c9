package org.duskline.analyzer.curve;

import java.time.Instant;

/**
 * One stretch of a curve as text: an hour or a day.
 *
 * @param from first instant of the stretch
 * @param until first instant after it
 * @param beesIn bees counted inward; NaN when nothing was counted
 * @param beesOut bees counted outward; NaN when nothing was counted
 * @param busiestPerMinute the most bees inward in a minute; NaN when nothing was counted
 * @param firstWeightKg first weight; NaN when nothing was weighed
 * @param lastWeightKg last weight; NaN when nothing was weighed
 * @param lowBoxCelsius coldest inside; NaN when not measured
 * @param highBoxCelsius warmest inside; NaN when not measured
 * @param samples number of samples heard; 0 marks a silence
 */
public record CurveRow(
        Instant from,
        Instant until,
        double beesIn,
        double beesOut,
        double busiestPerMinute,
        double firstWeightKg,
        double lastWeightKg,
        double lowBoxCelsius,
        double highBoxCelsius,
        int samples) {}
