package org.duskline.collector.wire;

import java.util.HashMap;
import java.util.Map;

/**
 * What a node can measure, with the range that a working sensor stays in. Ranges are common practice for a bait hive
 * unless a source is named.
 */
enum Quantity {
    IN(0, "in", "count", Mark.ABSURD_COUNT),
    OUT(1, "out", "count", Mark.ABSURD_COUNT),
    WEIGHT(2, "weight", "kg", Mark.ABSURD_WEIGHT),
    LOAD(3, "load", "count", Mark.ABSURD_WEIGHT),
    WEIGHT_SD(4, "weight-sd", "kg", Mark.ABSURD_WEIGHT_SPREAD),
    CELL(5, "cell", "Cel", Mark.ABSURD_CELL),
    BOX(6, "box", "Cel", Mark.ABSURD_BOX),
    HUMIDITY(7, "rh", "%RH", Mark.ABSURD_HUMIDITY),
    BATTERY(8, "battery", "V", Mark.ABSURD_BATTERY),
    BOOT(9, "boot", "count", null),
    SEQ(10, "seq", "count", null);

    /** How many of them are values of a sample; the rest, boot and seq, number the pack. */
    static final int VALUES = 9;

    private static final Map<String, Quantity> BY_NAME = new HashMap<>();

    /** The largest count that a double holds exactly. */
    private static final double LARGEST_COUNT = 9.007199254740992e15;
    /** Full scale of a 24-bit converter (HX711 data sheet, Avia Semiconductor): saturated, not weighed. */
    private static final double CONVERTER_MAX = 8_388_607;

    private static final double CONVERTER_MIN = -8_388_608;
    /** What a DS18B20 holds before its first conversion (Maxim data sheet, table 1). */
    private static final double THERMOMETER_POWER_ON = 85;

    static {
        for (Quantity quantity : values()) {
            BY_NAME.put(quantity.text, quantity);
        }
    }

    private final int place;
    private final String text;
    private final String unit;
    private final Mark absurd;

    Quantity(int place, String text, String unit, Mark absurd) {
        this.place = place;
        this.text = text;
        this.unit = unit;
        this.absurd = absurd;
    }

    /** Its place among the values of a sample. */
    int place() {
        return place;
    }

    String text() {
        return text;
    }

    String unit() {
        return unit;
    }

    /** The quantity that a resolved name ends in, after its last {@code :} or {@code /}; null for any other name. */
    static Quantity of(String resolvedName) {
        int cut = Math.max(resolvedName.lastIndexOf(':'), resolvedName.lastIndexOf('/'));
        return BY_NAME.get(cut < 0 ? resolvedName : resolvedName.substring(cut + 1));
    }

    /** The mark bit of a value that no working sensor gives, or 0. A value that was sent as not-a-number is one. */
    int markBit(double value) {
        return isSane(value) ? 0 : absurd.bit();
    }

    private boolean isSane(double value) {
        return switch (this) {
            case IN, OUT -> value >= 0 && value <= LARGEST_COUNT && value == Math.rint(value);
            case WEIGHT -> value >= -50 && value <= 500;
            case WEIGHT_SD -> value >= 0 && value <= 500;
            // -1 and 0 are a data line stuck high and low (common practice); a mean of a live cell never lands there.
            case LOAD -> value > CONVERTER_MIN && value < CONVERTER_MAX && value != -1 && value != 0;
            // The range shuts out -127, by which common thermometer libraries say "disconnected".
            case CELL, BOX -> value >= -60 && value <= 90 && value != THERMOMETER_POWER_ON;
            case HUMIDITY -> value >= 0 && value <= 105;
            case BATTERY -> value >= 0 && value <= 60;
            case BOOT, SEQ -> value >= 0 && value <= LARGEST_COUNT && value == Math.rint(value);
        };
    }

    /** Boot or seq as a whole number; -1 where what was sent is none. */
    long wholeNumber(double value) {
        return isSane(value) ? (long) value : -1;
    }
}
