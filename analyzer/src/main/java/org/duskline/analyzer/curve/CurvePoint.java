package org.duskline.analyzer.curve;

/**
 * One moment of a trap's curve. What was not measured is {@link Double#NaN}, never 0.
 *
 * @param timeMillis when, Unix milliseconds
 * @param minutes the stretch before it that the traffic was counted over; NaN when nothing was counted
 * @param inPerMinute bees inward per minute over that stretch
 * @param outPerMinute bees outward per minute over that stretch
 * @param weightKg weight of the whole box
 * @param evenedKg the same as the scale would show at one temperature; NaN where its drift is not known
 * @param boxCelsius temperature inside
 * @param cellCelsius temperature at the load cell, in the shade
 */
public record CurvePoint(
        long timeMillis,
        double minutes,
        double inPerMinute,
        double outPerMinute,
        double weightKg,
        double evenedKg,
        double boxCelsius,
        double cellCelsius) {

    public double value(Quantity quantity) {
        return switch (quantity) {
            case IN_PER_MINUTE -> inPerMinute;
            case OUT_PER_MINUTE -> outPerMinute;
            case WEIGHT_KG -> weightKg;
            case EVENED_KG -> evenedKg;
            case BOX_CELSIUS -> boxCelsius;
            case CELL_CELSIUS -> cellCelsius;
        };
    }
}
