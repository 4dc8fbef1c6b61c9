package org.duskline.analyzer.curve;

/** What a curve can draw, each with the unit that its numbers are in. */
public enum Quantity {
    IN_PER_MINUTE("bees/min"),
    OUT_PER_MINUTE("bees/min"),
    WEIGHT_KG("kg"),
    EVENED_KG("kg"),
    BOX_CELSIUS("°C"),
    CELL_CELSIUS("°C");

    private final String unit;

    Quantity(String unit) {
        this.unit = unit;
    }

    public String unit() {
        return unit;
    }
}
